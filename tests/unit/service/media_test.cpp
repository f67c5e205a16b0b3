#include "service/detail/media.hpp"

#include <gtest/gtest.h>

#include "service/detail/assets.hpp"

namespace wm::service::detail {
namespace {

TEST(Media, AStoredTypeCannotBreakOutOfItsHeader) {
  EXPECT_EQ(clean_type("Image/JPEG"), "image/jpeg");
  EXPECT_EQ(clean_type("application/vnd.ms-excel"), "application/vnd.ms-excel");
  for (const auto* type : {"", "image", "image/", "/png", "image/png\r\nX: 1", "image/png; a=b",
                           "text/ht ml", "a/b/c"})
    EXPECT_EQ(clean_type(type), "application/octet-stream") << type;
}

TEST(Media, OnlyPicturesSoundAndPdfAreShown) {
  for (const auto* type : {"image/png", "image/heic", "audio/mpeg", "application/pdf"})
    EXPECT_TRUE(may_be_shown(type)) << type;
  for (const auto* type : {"image/svg+xml", "text/html", "application/xhtml+xml", "text/plain",
                           "application/octet-stream", "video/mp4"})
    EXPECT_FALSE(may_be_shown(type)) << type;
}

TEST(Media, WhatNoEventNamesIsToldByItsFirstBytes) {
  const bay::State nothing;
  EXPECT_EQ(media_of(nothing, "h", "\xFF\xD8\xFF\xE0 rest").type, "image/jpeg");
  EXPECT_EQ(media_of(nothing, "h", "%PDF-1.7").type, "application/pdf");
  const auto page = media_of(nothing, "h", "<html><script>");
  EXPECT_EQ(page.type, "application/octet-stream");
  EXPECT_FALSE(page.shown);
}

TEST(Media, TheEventThatNamesItSaysWhatItIs) {
  bay::State state;
  state.attachments.emplace_back();
  state.attachments.back().about.hash = "h";
  state.attachments.back().about.name = "log.txt";
  state.attachments.back().about.media_type = "text/plain";
  const auto media = media_of(state, "h", "%PDF-1.7");
  EXPECT_EQ(media.type, "text/plain");
  EXPECT_EQ(media.name, "log.txt");
  EXPECT_FALSE(media.shown);
}

TEST(Media, AFileNameCannotBreakOutOfItsHeader) {
  EXPECT_EQ(disposition(true, "a b.jpg"),
            "inline; filename=\"a b.jpg\"; filename*=UTF-8''a%20b.jpg");
  EXPECT_EQ(disposition(false, "\"\r\n;é"),
            "attachment; filename=\"______\"; filename*=UTF-8''%22%0D%0A%3B%C3%A9");
  EXPECT_EQ(disposition(false, ""), "attachment");
}

TEST(Assets, EncodingsAndTagsAreReadAsListed) {
  EXPECT_TRUE(takes_gzip("gzip, deflate, br"));
  EXPECT_TRUE(takes_gzip("br, gzip;q=0.5"));
  EXPECT_FALSE(takes_gzip("br"));
  EXPECT_FALSE(takes_gzip("gzip;q=0"));
  EXPECT_FALSE(takes_gzip(""));
  EXPECT_TRUE(has_tag("\"a\", W/\"b\"", "\"b\""));
  EXPECT_TRUE(has_tag("*", "\"b\""));
  EXPECT_FALSE(has_tag("\"a\"", "\"b\""));
}

}  // namespace
}  // namespace wm::service::detail

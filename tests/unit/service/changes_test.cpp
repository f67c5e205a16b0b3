#include "service/detail/changes.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <stdexcept>

namespace wm::service::detail {
namespace {

using std::chrono::milliseconds;

TEST(Changes, AListenerHearsAtOnceWhereTheRecordStands) {
  Changes changes([] { return record::Head{7, "h"}; });
  ASSERT_TRUE(changes.join());
  const auto head = changes.wait_beyond(3, milliseconds(0));
  ASSERT_TRUE(head);
  EXPECT_EQ(head->sequence, 7);
  EXPECT_FALSE(changes.wait_beyond(7, milliseconds(0)));
}

TEST(Changes, WhatAnotherProcessWritesIsNoticed) {
  std::atomic<std::int64_t> stands{1};
  Changes changes([&] { return record::Head{stands, "h"}; });
  ASSERT_TRUE(changes.join());
  stands = 2;
  // About a second; a busy machine may take longer.
  EXPECT_TRUE(changes.wait_beyond(1, milliseconds(20000)));
}

TEST(Changes, ThereAreOnlySoManyListeners) {
  Changes changes([] { return record::Head{}; }, 2);
  EXPECT_TRUE(changes.join());
  EXPECT_TRUE(changes.join());
  EXPECT_FALSE(changes.join());
  changes.leave();
  EXPECT_TRUE(changes.join());
}

TEST(Changes, StoppingWakesWhoWaits) {
  Changes changes([] { return record::Head{}; });
  std::thread stopper([&] { changes.stop(); });
  EXPECT_FALSE(changes.wait_beyond(0, milliseconds(60000)));
  stopper.join();
  EXPECT_FALSE(changes.join());
}

TEST(Changes, AFailingDiskDoesNotEndTheListening) {
  Changes changes([]() -> record::Head { throw std::runtime_error("disk"); });
  EXPECT_TRUE(changes.join());
  changes.note({4, "h"});
  EXPECT_TRUE(changes.wait_beyond(3, milliseconds(0)));
}

}  // namespace
}  // namespace wm::service::detail

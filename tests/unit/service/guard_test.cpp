#include "service/detail/guard.hpp"

#include <gtest/gtest.h>

namespace wm::service::detail {
namespace {

TEST(Guard, TakesTheNamesOfThisMachineWithItsPort) {
  for (const auto* host : {"127.0.0.1:8480", "localhost:8480", "LocalHost:8480", "[::1]:8480"})
    EXPECT_TRUE(host_is_ours(host, "127.0.0.1", 8480)) << host;
  EXPECT_TRUE(host_is_ours("localhost", "127.0.0.1", 80));
}

TEST(Guard, RefusesAnyOtherNameSoThatARepointedOneFails) {
  for (const auto* host :
       {"", "evil.example:8480", "127.0.0.1:8481", "127.0.0.1", "localhost.evil.example:8480",
        "localhost:8480@evil.example", "127.0.0.1:8480:1", "[::1", "[::1]8480", ":8480",
        "localhost:", "localhost:08480x", "localhost:99999", "localhost.:8480", "192.168.1.5:8480"})
    EXPECT_FALSE(host_is_ours(host, "127.0.0.1", 8480)) << host;
}

TEST(Guard, TakesTheAddressItListensOnAndAnyPlainAddressWhenItListensOnAll) {
  EXPECT_TRUE(host_is_ours("192.168.1.5:8480", "192.168.1.5", 8480));
  EXPECT_FALSE(host_is_ours("192.168.1.6:8480", "192.168.1.5", 8480));
  EXPECT_TRUE(host_is_ours("192.168.1.6:8480", "0.0.0.0", 8480));
  EXPECT_TRUE(host_is_ours("[fe80::1]:8480", "::", 8480));
  EXPECT_FALSE(host_is_ours("evil.example:8480", "0.0.0.0", 8480));
}

TEST(Guard, AnOriginMustBeThePageOfThisServer) {
  EXPECT_TRUE(origin_is_ours("http://127.0.0.1:8480", "127.0.0.1:8480"));
  EXPECT_TRUE(origin_is_ours("http://LOCALHOST:8480", "localhost:8480"));
  for (const auto* origin :
       {"", "null", "http://", "https://127.0.0.1:8480", "http://127.0.0.1:8481",
        "http://evil.example", "127.0.0.1:8480", "http://127.0.0.1:8480.evil.example"})
    EXPECT_FALSE(origin_is_ours(origin, "127.0.0.1:8480")) << origin;
}

TEST(Guard, OnlyJsonIsJson) {
  EXPECT_TRUE(is_json("application/json"));
  EXPECT_TRUE(is_json("Application/JSON ; charset=utf-8"));
  for (const auto* type : {"", "text/plain", "application/json2", "application/jso",
                           "application/x-www-form-urlencoded", "text/plain; application/json"})
    EXPECT_FALSE(is_json(type)) << type;
}

}  // namespace
}  // namespace wm::service::detail

#include "service/detail/texts.hpp"

#include <gtest/gtest.h>

#include <stdexcept>

namespace wm::service::detail {
namespace {

TEST(Answered, AFailingDiskIsToldWithWhatToDoAndWithoutProblems) {
  const auto answer = answered(
      []() -> Answer {
        throw record::Broken(record::Fault::disk_full, "the disk is \"full\"", "Make room.");
      },
      true);
  EXPECT_EQ(answer.status, 503);
  EXPECT_EQ(answer.body, R"({"fault":{"what":"the disk is \"full\"","do_next":"Make room."}})");
}

TEST(Answered, TheInnerTextOfAFaultStaysInside) {
  const auto foreseen_by_nobody = [](const std::function<Answer()>& route) {
    const auto answer = answered(route, true);
    EXPECT_EQ(answer.status, 500);
    EXPECT_EQ(answer.body.find("secret"), std::string::npos);
    EXPECT_NE(answer.body.find("fault"), std::string::npos);
  };
  foreseen_by_nobody([]() -> Answer { throw std::runtime_error("secret"); });
  foreseen_by_nobody([]() -> Answer { throw 7; });
}

TEST(ProblemsAnswer, TheStatusSaysWhatKindOfProblemItIs) {
  const auto status = [](std::vector<Kind> kinds) {
    Problems problems;
    for (const auto kind : kinds) problems.push_back({kind, {}, "what", {}, {}, {}, {}});
    return problems_answer(problems).status;
  };
  EXPECT_EQ(status({Kind::missing, Kind::refused}), 422);
  EXPECT_EQ(status({Kind::missing, Kind::conflict}), 409);
  EXPECT_EQ(status({Kind::damaged}), 500);
}

TEST(EventJson, ABodyThatIsNoJsonDoesNotSpoilTheRest) {
  record::StoredEvent event;
  event.body = R"({"text":"x"})";
  EXPECT_NE(event_json(event).find(R"("body":{"text":"x"})"), std::string::npos);
  event.body = "{]";
  EXPECT_NE(event_json(event).find(R"("body":"{]")"), std::string::npos);
}

}  // namespace
}  // namespace wm::service::detail

#include <algorithm>

#include "record/journal.hpp"
#include "support.hpp"

namespace wm::record::test {
namespace {

TEST(Append, GivesEachEventItsPlaceInTheChain) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  EXPECT_EQ(journal.last(), (Head{0, std::string(64, '0')}));
  const Appended one = need(journal.append(an_event(1)));
  ASSERT_EQ(one.events.size(), 1U);
  EXPECT_FALSE(one.was_there_already);
  EXPECT_EQ(one.events[0].sequence, 1);
  EXPECT_EQ(one.events[0].previous_hash, std::string(64, '0'));
  const Appended two = need(journal.append(std::vector{an_event(2), an_event(3)}));
  EXPECT_EQ(two.events[0].previous_hash, one.events[0].hash);
  EXPECT_EQ(two.events[1].previous_hash, two.events[0].hash);
  EXPECT_EQ(journal.last(), (Head{3, two.events[1].hash}));
}

TEST(Append, WhatIsReadBackIsWhatWasHandedIn) {
  TemporaryFolder folder;
  NewEvent event = an_event(1, "{ \"spaces\" :  \"\xc2\xb5 \xe2\x84\xa6\", \"n\": 1.50 }\n");
  event.happened = "2026-11-25T10:00:00.5+01:00";
  {
    Journal journal = a_journal(folder / "a.binder");
    need(journal.append(event));
  }
  Journal journal = need(Journal::open(folder / "a.binder"));
  const StoredEvent stored = need(journal.find("ev-1"));
  EXPECT_EQ(static_cast<const NewEvent&>(stored), event) << "never re-serialised";
  EXPECT_EQ(problem_of(journal.find("ev-2")).kind, Kind::not_found);
}

TEST(Append, NothingIsNoWork) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  EXPECT_TRUE(need(journal.append(std::span<const NewEvent>{})).events.empty());
}

TEST(Append, ARetryIsHarmlessAndGivesWhatIsStored) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  const Appended first = need(journal.append(an_event(1), 0));
  need(journal.append(an_event(2)));
  NewEvent again = an_event(1);
  again.recorded = "2026-11-25T18:09:00Z";  // the door stamps a retry anew
  const Appended second = need(journal.append(again, 0));
  EXPECT_TRUE(second.was_there_already);
  EXPECT_EQ(second.events, first.events);
  EXPECT_EQ(journal.last_sequence(), 2);
}

TEST(Append, ABatchOfWhichAPartIsThereAddsTheRest) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder", 1);
  const Appended both = need(journal.append(std::vector{an_event(1), an_event(2)}));
  EXPECT_FALSE(both.was_there_already);
  EXPECT_EQ(both.events[0].sequence, 1);
  EXPECT_EQ(both.events[1].sequence, 2);
}

TEST(Append, TheSameIdWithOtherContentIsAConflict) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder", 1);
  for (auto* spoil :
       {+[](NewEvent& e) { e.body = "{}"; }, +[](NewEvent& e) { e.kind = "other"; },
        +[](NewEvent& e) { e.version = 2; }, +[](NewEvent& e) { e.happened = "2026-11-24"; },
        +[](NewEvent& e) { e.author = "N. Example"; }, +[](NewEvent& e) { e.device = "phone"; }}) {
    NewEvent other = an_event(1);
    spoil(other);
    const Problem problem = problem_of(journal.append(std::vector{an_event(7), other}));
    EXPECT_EQ(problem.kind, Kind::conflict);
    EXPECT_EQ(problem.path, "events/1/id");
    EXPECT_EQ(journal.last_sequence(), 1) << "all or none";
  }
}

TEST(Append, AnIdTwiceInOneBatchIsRefused) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  const Problem problem = problem_of(journal.append(std::vector{an_event(1), an_event(1)}));
  EXPECT_EQ(problem.kind, Kind::duplicate);
  EXPECT_EQ(problem.path, "events/1/id");
  EXPECT_EQ(journal.last_sequence(), 0);
}

TEST(Append, ToldWhenTheRecordHasMovedOn) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder", 3);
  const Problem problem = problem_of(journal.append(an_event(9), 2));
  EXPECT_EQ(problem.kind, Kind::conflict);
  EXPECT_NE(problem.what.find("is 3 now"), std::string::npos) << problem.what;
  EXPECT_EQ(problem.expected, "3");
  EXPECT_EQ(need(journal.append(an_event(9), 3)).events[0].sequence, 4);
}

TEST(Append, MayReferToAnEarlierEventOfTheSameBatch) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  std::vector<NewEvent> events{an_event(1), an_event(2)};
  events[1].refers_to = "ev-1";
  need(journal.append(events));
  std::vector<NewEvent> wrong{an_event(3), an_event(4)};
  wrong[0].refers_to = "ev-4";  // only what came before can be referred to
  EXPECT_EQ(problem_of(journal.append(wrong)).kind, Kind::not_found);
}

TEST(Append, RefusedWhenOpenedReadOnly) {
  TemporaryFolder folder;
  a_journal(folder / "a.binder", 1);
  Journal journal = need(Journal::open(folder / "a.binder", Access::read_only));
  EXPECT_EQ(problem_of(journal.append(an_event(2))).kind, Kind::refused);
  EXPECT_EQ(problem_of(journal.put_attachment("x")).kind, Kind::refused);
  EXPECT_EQ(need(journal.read_from(0)).size(), 1U);
}

TEST(Append, SeesWhatAnotherHandWrote) {
  TemporaryFolder folder;
  Journal one = a_journal(folder / "a.binder", 1);
  Journal two = need(Journal::open(folder / "a.binder"));
  need(two.append(an_event(2)));
  EXPECT_EQ(one.last_sequence(), 2);
  EXPECT_EQ(need(one.append(an_event(3))).events[0].previous_hash, need(two.find("ev-2")).hash);
  EXPECT_EQ(two.head(), one.head());
}

TEST(Append, LeavesOneFileAtRest) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder", 3);
  EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder.path()), {}), 1)
      << "whoever copies the file has everything that was confirmed";
}

TEST(Read, InPagesAndInAStream) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder", 1200);
  EXPECT_EQ(need(journal.read_from(0)).size(), 1000U);
  EXPECT_EQ(need(journal.read_from(1190, 3)).front().sequence, 1191);
  EXPECT_EQ(need(journal.read_from(1200)).size(), 0U);
  std::int64_t next = 1;
  need(journal.read_each(0, [&](StoredEvent&& event) { return event.sequence == next++; }));
  EXPECT_EQ(next, 1201);
  int seen = 0;
  need(journal.read_each(10, [&](StoredEvent&&) { return ++seen < 5; }));
  EXPECT_EQ(seen, 5);
}

TEST(Read, NobodyIsLockedOutWhileAReaderTakesItsTime) {
  TemporaryFolder folder;
  Journal reader = a_journal(folder / "a.binder", 3);
  Journal writer = need(Journal::open(folder / "a.binder"));
  int seen = 0;
  need(reader.read_each(0, [&](StoredEvent&&) {
    need(writer.append(an_event(100 + seen)));
    return ++seen < 3;
  }));
  EXPECT_EQ(writer.last_sequence(), 6);
}

TEST(Guards, SqlCannotChangeDeleteReplaceOrForkTheRecord) {
  TemporaryFolder folder;
  a_journal(folder / "a.binder", 3);
  const auto path = folder / "a.binder";
  EXPECT_NE(plain_sql(path, "UPDATE journal SET body = '{}' WHERE sequence = 2"), "");
  EXPECT_NE(plain_sql(path, "DELETE FROM journal WHERE sequence = 3"), "");
  for (const auto* verb : {"INSERT", "INSERT OR REPLACE", "REPLACE"}) {
    for (const auto* change : {"sequence", "3", "9", "-1"}) {
      EXPECT_NE(plain_sql(path, std::string(verb) + " INTO journal SELECT " + change +
                                    ", id || 'x', kind, version, happened, recorded, author, "
                                    "device, refers_to, body, previous_hash, hash, marks "
                                    "FROM journal WHERE sequence = 2"),
                "")
          << verb << ' ' << change;
    }
    EXPECT_NE(plain_sql(path, std::string(verb) +
                                  " INTO journal SELECT 4, id, kind, version, happened, recorded, "
                                  "author, device, refers_to, body, (SELECT hash FROM journal "
                                  "WHERE sequence = 3), hash, marks FROM journal "
                                  "WHERE sequence = 2"),
              "")
        << verb;
  }
  EXPECT_EQ(need(Journal::open(path)).last_sequence(), 3);
}

}  // namespace
}  // namespace wm::record::test

#include "e2e/power_cut/scenario.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <functional>

#include "record/detail/row_hash.hpp"
#include "record/digest.hpp"
#include "record/verify.hpp"

namespace wm::record::test {
namespace {

namespace fs = std::filesystem;

class Worker {
 public:
  Worker(ForgetfulDisk& disk, const fs::path& folder, const Work& work, Truth& truth)
      : disk_(disk), folder_(folder), work_(work), truth_(truth), random_(work.seed) {
    tuning_ = {work.sync, 200, disk.name()};
  }

  void run() {
    const bool created = persist([&] {
      // Where even the removal of a half-made file was refused, a person deletes it.
      if (complaint_.find("can be made") != std::string::npos) {
        detail::remove_file(path(), disk_.name());
      }
      return keep(detail::create_journal(path(), tuning_));
    });
    if (!created) return;
    truth_.created = true;
    for (int step = 0; step < work_.steps; ++step) {
      const auto choice = random_() % 12;
      const bool on = choice < 8    ? append()
                      : choice < 9  ? attach()
                      : choice < 11 ? reopen()
                                    : copy(step);
      if (!on) return;
    }
    journal_.reset();
  }

 private:
  [[nodiscard]] fs::path path() const { return folder_ / k_binder_name; }

  /// Try until it works or the power is gone. False: the power is gone.
  bool persist(const std::function<bool()>& act) {
    for (int attempt = 0; attempt < 20; ++attempt) {
      bool done = false;
      try {
        done = act();
      } catch (const Broken&) {
        done = false;
      }
      if (disk_.is_cut()) {
        journal_.reset();
        return false;
      }
      if (done) return true;
      EXPECT_TRUE(disk_.has_refused()) << "failed without a reason: " << complaint_;
      ++truth_.failures;
    }
    ADD_FAILURE() << "never worked again: " << complaint_;
    return false;
  }

  bool keep(Result<Journal> result) {
    if (!result) {
      complaint_ = result.error().what;
      return false;
    }
    journal_ = std::make_unique<Journal>(std::move(result).value());
    return true;
  }

  bool append() {
    std::vector<NewEvent> events;
    const auto count = 1 + random_() % 4;
    for (std::uint64_t i = 0; i < count; ++i) {
      const std::size_t size = random_() % 10 == 0 ? 20000 : random_() % 700;
      events.push_back({"ev-" + std::to_string(++made_), "note", 1, "2026-11-25",
                        "2026-11-25T18:04:31Z", "M. Example", "bench laptop", "",
                        '"' + std::string(size, static_cast<char>('a' + random_() % 26)) + '"'});
    }
    truth_.on_its_way = events;
    const auto before = static_cast<std::int64_t>(truth_.confirmed.size());
    const bool on = persist([&] {
      const auto appended = journal_->append(events, before);
      if (!appended) complaint_ = appended.error().what;
      return appended.has_value();
    });
    if (!on) return false;
    truth_.confirmed.insert(truth_.confirmed.end(), events.begin(), events.end());
    truth_.on_its_way.clear();
    return true;
  }

  bool attach() {
    const std::string content(1 + random_() % 300000, static_cast<char>(random_() & 0x7fU));
    return persist([&] {
      const auto put = journal_->put_attachment(content);
      if (!put) return false;
      truth_.attachments[put->hash] = content;
      return !disk_.is_cut();
    });
  }

  bool reopen() {
    journal_.reset();
    return persist([&] { return keep(detail::open_journal(path(), Access::read_write, tuning_)); });
  }

  bool copy(int step) {
    int attempt = 0;
    return persist([&] {
      // A failed copy may leave a stub where even its removal was refused: take another name.
      const std::string name =
          "copy-" + std::to_string(step) + "-" + std::to_string(attempt++) + ".binder";
      truth_.attempted_copies.insert(name);
      const auto copied = journal_->copy_to(folder_ / name);
      if (!copied) complaint_ = copied.error().what;
      if (copied && !disk_.is_cut()) {
        truth_.copies[name] = static_cast<std::int64_t>(truth_.confirmed.size());
      }
      return copied.has_value();
    });
  }

  ForgetfulDisk& disk_;
  fs::path folder_;
  Work work_;
  Truth& truth_;
  std::mt19937_64 random_;
  detail::Tuning tuning_;
  std::unique_ptr<Journal> journal_;
  std::string complaint_;
  int made_{};
};

/// Heads after 0, 1, 2, ... events, computed from the plain list alone.
std::vector<std::string> heads_of(const std::vector<NewEvent>& events) {
  std::vector<std::string> heads{hash_before_first()};
  for (const NewEvent& e : events) {
    const std::string sequence = std::to_string(heads.size());
    const std::string version = std::to_string(e.version);
    heads.push_back(detail::row_hash({heads.back(), sequence, e.id, e.kind, version, e.happened,
                                      e.recorded, e.author, e.device, e.refers_to, e.body}));
  }
  return heads;
}

std::string described(const Verification& verification) {
  std::string all;
  for (const Finding& f : verification.findings) {
    all += " [" + std::to_string(f.sequence) + "/" + f.column + ": " + f.what + "]";
  }
  return all;
}

/// Compare an opened binder with the truth: it must hold all of the confirmed events, and of those
/// on their way all or none.
std::string compare(Journal& journal, const Truth& truth, std::int64_t at_least, bool exactly) {
  std::vector<NewEvent> possible = truth.confirmed;
  possible.insert(possible.end(), truth.on_its_way.begin(), truth.on_its_way.end());
  const auto heads = heads_of(possible);
  const Head last = journal.last();
  if (last.sequence < at_least) {
    return "events lost: " + std::to_string(last.sequence) + " of " + std::to_string(at_least);
  }
  if (last.sequence >= static_cast<std::int64_t>(heads.size())) return "events from nowhere";
  const auto whole = static_cast<std::int64_t>(truth.confirmed.size());
  if (!exactly && last.sequence != whole &&
      last.sequence + 1 != static_cast<std::int64_t>(heads.size())) {
    return "a batch was torn";
  }
  if (last.hash != heads[static_cast<std::size_t>(last.sequence)]) return "another history";
  const auto events = journal.read_from(0, 1 << 20);
  if (!events) return events.error().what;
  for (std::size_t i = 0; i < events->size(); ++i) {
    if (static_cast<const NewEvent&>((*events)[i]) != possible[i]) {
      return "event " + std::to_string(i + 1) + " differs";
    }
  }
  const auto verification = verify(journal);
  return verification.clean() ? std::string() : "verify:" + described(verification);
}

std::string copies_lost(const fs::path& folder, const Truth& truth) {
  for (const std::string& name : truth.attempted_copies) {
    const auto confirmed = truth.copies.find(name);
    const bool must = confirmed != truth.copies.end();
    auto copy = Journal::open(folder / name);
    if (!copy && must) return name + ": " + copy.error().what;
    if (!copy) continue;
    const auto lost = compare(*copy, truth, must ? confirmed->second : 0, true);
    if (!lost.empty()) return name + ": " + lost;
  }
  return {};
}

}  // namespace

void do_work(ForgetfulDisk& disk, const fs::path& folder, const Work& work, Truth& truth) {
  Worker(disk, folder, work, truth).run();
}

std::string what_was_lost(const fs::path& folder, const Truth& truth) try {
  auto journal = Journal::open(folder / k_binder_name);
  if (!journal) return truth.created ? journal.error().what : std::string();
  const auto confirmed = static_cast<std::int64_t>(truth.confirmed.size());
  if (auto lost = compare(*journal, truth, confirmed, false); !lost.empty()) return lost;
  for (const auto& [hash, content] : truth.attachments) {
    const auto got = journal->get_attachment(hash);
    if (!got || *got != content) return "attachment lost";
  }
  if (auto lost = copies_lost(folder, truth); !lost.empty()) return lost;
  // Work goes on where it stopped.
  NewEvent next{"after", "note", 1, "2026-11-26", "2026-11-26T08:00:00Z", "", "", "", "{}"};
  if (!journal->append(next)) return "cannot go on";
  return verify(*journal).clean() ? std::string() : "in disorder after going on";
} catch (const Broken& broken) {
  return broken.what();
}

int count_from_environment(const char* name, int otherwise) {
  const char* text = std::getenv(name);
  const int count = text == nullptr ? 0 : std::atoi(text);
  return count > 0 ? count : otherwise;
}

}  // namespace wm::record::test

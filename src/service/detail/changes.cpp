#include "service/detail/changes.hpp"

#include <exception>
#include <utility>

namespace wm::service::detail {

constexpr std::chrono::milliseconds k_ask_every{1000};

Changes::Changes(std::function<record::Head()> ask, std::size_t most_listeners)
    : ask_(std::move(ask)), most_(most_listeners), watcher_([this] { watch(); }) {}

Changes::~Changes() {
  stop();
  watcher_.join();
}

bool Changes::join() {
  {
    const std::lock_guard lock(mutex_);
    if (stopping_ || listeners_ >= most_) return false;
    ++listeners_;
  }
  moved_.notify_all();
  // Nobody may have asked for hours: a new listener wants to know where we stand now.
  ask_now();
  return true;
}

void Changes::leave() {
  const std::lock_guard lock(mutex_);
  if (listeners_ > 0) --listeners_;
}

void Changes::note(const record::Head& head) {
  {
    const std::lock_guard lock(mutex_);
    if (head.sequence <= latest_.sequence) return;
    latest_ = head;
  }
  moved_.notify_all();
}

std::optional<record::Head> Changes::wait_beyond(std::int64_t after,
                                                 std::chrono::milliseconds longest) {
  std::unique_lock lock(mutex_);
  moved_.wait_for(lock, longest, [&] { return stopping_ || latest_.sequence > after; });
  if (stopping_ || latest_.sequence <= after) return std::nullopt;
  return latest_;
}

void Changes::stop() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  moved_.notify_all();
}

bool Changes::stopping() {
  const std::lock_guard lock(mutex_);
  return stopping_;
}

void Changes::ask_now() {
  try {
    note(ask_());
  } catch (const std::exception&) {
    // A disk that fails is told to whoever asks for a view; listeners keep what they know.
    return;
  }
}

void Changes::watch() {
  for (;;) {
    {
      std::unique_lock lock(mutex_);
      moved_.wait(lock, [&] { return stopping_ || listeners_ > 0; });
      moved_.wait_for(lock, k_ask_every, [&] { return stopping_; });
      if (stopping_) return;
      if (listeners_ == 0) continue;
    }
    ask_now();
  }
}

}  // namespace wm::service::detail

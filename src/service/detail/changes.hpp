#pragma once
/// Where the record stands, told to every page that listens.

#include <chrono>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>

#include "record/event.hpp"

namespace wm::service::detail {

/// While somebody listens, the binder is asked about once a second what other processes wrote.
/// What this process records is told at once.
class Changes {
 public:
  /// @param ask  where the record stands now; may throw, then the last known place stands
  explicit Changes(std::function<record::Head()> ask, std::size_t most_listeners = 12);
  ~Changes();
  Changes(const Changes&) = delete;
  Changes& operator=(const Changes&) = delete;
  Changes(Changes&&) = delete;
  Changes& operator=(Changes&&) = delete;

  /// @return false when there are as many listeners as there may be, or all is being stopped.
  [[nodiscard]] bool join();
  void leave();

  void note(const record::Head& head);
  /// Wait until the record is beyond `after`, but not longer than that.
  [[nodiscard]] std::optional<record::Head> wait_beyond(std::int64_t after,
                                                        std::chrono::milliseconds longest);
  void stop();
  [[nodiscard]] bool stopping();

 private:
  void watch();
  void ask_now();

  std::function<record::Head()> ask_;
  std::size_t most_;
  std::mutex mutex_;
  std::condition_variable moved_;
  record::Head latest_;
  std::size_t listeners_{};
  bool stopping_{};
  std::thread watcher_;
};

}  // namespace wm::service::detail

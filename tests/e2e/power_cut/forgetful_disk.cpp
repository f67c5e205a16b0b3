#include "e2e/power_cut/forgetful_disk.hpp"

#include <sqlite3.h>

#include <algorithm>
#include <atomic>
#include <cstring>
#include <fstream>
#include <optional>
#include <set>
#include <vector>

namespace wm::record::test {
namespace {

using Bytes = std::vector<unsigned char>;

/// One change that is not on the platter yet: bytes at a place, or (no bytes) a new length.
struct Pending {
  std::size_t at{};
  std::optional<Bytes> bytes;
};

struct Inode {
  Bytes now;      ///< what programs see
  Bytes durable;  ///< what the platter has for certain
  std::vector<Pending> pending;
  int shared{};  ///< locks, as SQLite's file layers know them
  const void* reserved{};
  const void* pending_lock{};
  const void* exclusive{};
};

using Names = std::map<std::string, std::shared_ptr<Inode>>;

/// One change of a folder that is not on the platter yet: a name made (with inode) or deleted.
struct PendingName {
  std::string name;
  std::shared_ptr<Inode> inode;
};

void write_into(Bytes& bytes, std::size_t at, const unsigned char* data, std::size_t size) {
  if (bytes.size() < at + size) bytes.resize(at + size);
  std::copy_n(data, size, bytes.begin() + static_cast<std::ptrdiff_t>(at));
}

}  // namespace

struct ForgetfulDisk::State {
  std::string name;
  Habits habits;
  std::mt19937_64 random;
  sqlite3_vfs vfs{};
  Names now, durable;
  std::vector<PendingName> pending_names;
  std::int64_t operations{};
  std::int64_t cut_at{-1};
  bool cut{};
  Refusal refusal;
  int refused{};

  enum class Go { on, cut, refuse };

  /// Counts an operation that changes something. In the operation at which the power goes off the
  /// change still sets out (its pieces may arrive or not), but it never reports success.
  Go next() {
    if (cut) return Go::cut;
    const std::int64_t number = operations++;
    if (number == cut_at) {
      cut = true;
      return Go::on;
    }
    if (refusal.at >= 0 && number >= refusal.at && refused < refusal.times) {
      ++refused;
      return Go::refuse;
    }
    return Go::on;
  }

  /// Code to report once the change has set out.
  [[nodiscard]] int outcome(int when_cut) const { return cut ? when_cut : SQLITE_OK; }

  bool chance(double probability) {
    return static_cast<double>(random() >> 11U) * 0x1.0p-53 < probability;
  }

  void sync_names() {
    durable = now;
    pending_names.clear();
  }

  // What is left of one file after the cut.
  Bytes remains_of(const Inode& inode, double kept) {
    Bytes left = inode.durable;
    for (const Pending& change : inode.pending) {
      if (!change.bytes) {
        if (chance(kept)) left.resize(change.at);
        continue;
      }
      keep_part(change, kept, left);
    }
    return left;
  }

  void keep_part(const Pending& change, double kept, Bytes& left) {
    const std::size_t end = change.at + change.bytes->size();
    for (std::size_t at = change.at; at < end;) {
      const std::size_t sector_begin = at - at % habits.sector;
      const std::size_t sector_end = sector_begin + habits.sector;
      const std::size_t stop = std::min(end, sector_end);
      const bool torn = habits.leaves_rubbish && chance(0.05);
      if (torn) {
        // Without the promise to spare its neighbours the whole sector goes.
        const std::size_t from = habits.spares_neighbours ? at : sector_begin;
        const std::size_t to = habits.spares_neighbours ? stop : sector_end;
        Bytes rubbish(to - from);
        for (auto& byte : rubbish) byte = static_cast<unsigned char>(random() >> 32U);
        write_into(left, from, rubbish.data(), rubbish.size());
      } else if (chance(kept)) {
        write_into(left, at, change.bytes->data() + (at - change.at), stop - at);
      }
      at = stop;
    }
  }

  Names names_left(double kept) {
    Names left = durable;
    for (const PendingName& change : pending_names) {
      if (!chance(kept)) continue;
      if (change.inode) {
        left[change.name] = change.inode;
      } else {
        left.erase(change.name);
      }
    }
    return left;
  }
};

namespace {

using State = ForgetfulDisk::State;

struct File {
  sqlite3_file base;  // first, so that SQLite's pointer is ours
  State* disk;
  Inode* inode;
  std::shared_ptr<Inode>* holder;
  int lock;
  bool syncs_names;  ///< a new safety file: its first sync also syncs the folder
};

File& of(sqlite3_file* file) { return *reinterpret_cast<File*>(file); }
State& of(sqlite3_vfs* vfs) { return *static_cast<State*>(vfs->pAppData); }

int unlock_file(sqlite3_file* handle, int level) {
  File& file = of(handle);
  Inode& inode = *file.inode;
  if (inode.exclusive == &file) inode.exclusive = nullptr;
  if (inode.pending_lock == &file) inode.pending_lock = nullptr;
  if (inode.reserved == &file) inode.reserved = nullptr;
  if (level == SQLITE_LOCK_NONE && file.lock >= SQLITE_LOCK_SHARED) --inode.shared;
  file.lock = std::min(file.lock, level);
  return SQLITE_OK;
}

int lock_file(sqlite3_file* handle, int level) {
  File& file = of(handle);
  Inode& inode = *file.inode;
  const auto other = [&](const void* owner) { return owner != nullptr && owner != &file; };
  if (file.lock >= level) return SQLITE_OK;
  if (level == SQLITE_LOCK_SHARED) {
    if (other(inode.pending_lock) || other(inode.exclusive)) return SQLITE_BUSY;
    ++inode.shared;
  } else if (level == SQLITE_LOCK_RESERVED) {
    if (other(inode.reserved) || other(inode.pending_lock)) return SQLITE_BUSY;
    inode.reserved = &file;
  } else {
    if (other(inode.reserved) || other(inode.pending_lock)) return SQLITE_BUSY;
    inode.pending_lock = &file;
    file.lock = std::max(file.lock, SQLITE_LOCK_PENDING);
    if (inode.shared > 1) return SQLITE_BUSY;
    inode.exclusive = &file;
  }
  file.lock = level;
  return SQLITE_OK;
}

int check_reserved(sqlite3_file* handle, int* held) {
  const Inode& inode = *of(handle).inode;
  *held = inode.reserved != nullptr || inode.pending_lock != nullptr || inode.exclusive != nullptr;
  return SQLITE_OK;
}

int close_file(sqlite3_file* handle) {
  unlock_file(handle, SQLITE_LOCK_NONE);
  delete of(handle).holder;
  return SQLITE_OK;
}

int read_file(sqlite3_file* handle, void* into, int size, sqlite3_int64 at) {
  const File& file = of(handle);
  if (file.disk->cut) return SQLITE_IOERR_READ;
  const Bytes& bytes = file.inode->now;
  const auto begin = std::min(static_cast<std::size_t>(at), bytes.size());
  const auto count = std::min(static_cast<std::size_t>(size), bytes.size() - begin);
  if (count > 0) std::memcpy(into, bytes.data() + begin, count);
  if (count == static_cast<std::size_t>(size)) return SQLITE_OK;
  std::memset(static_cast<char*>(into) + count, 0, static_cast<std::size_t>(size) - count);
  return SQLITE_IOERR_SHORT_READ;
}

int write_file_at(sqlite3_file* handle, const void* data, int size, sqlite3_int64 at) {
  const File& file = of(handle);
  switch (file.disk->next()) {
    case State::Go::cut:
      return SQLITE_IOERR_WRITE;
    case State::Go::refuse:
      return file.disk->refusal.code;
    case State::Go::on:
      break;
  }
  const auto* bytes = static_cast<const unsigned char*>(data);
  const auto place = static_cast<std::size_t>(at);
  const auto count = static_cast<std::size_t>(size);
  write_into(file.inode->now, place, bytes, count);
  file.inode->pending.push_back({place, Bytes(bytes, bytes + count)});
  return file.disk->outcome(SQLITE_IOERR_WRITE);
}

int truncate_file(sqlite3_file* handle, sqlite3_int64 size) {
  const File& file = of(handle);
  switch (file.disk->next()) {
    case State::Go::cut:
      return SQLITE_IOERR_TRUNCATE;
    case State::Go::refuse:
      return SQLITE_IOERR_TRUNCATE;
    case State::Go::on:
      break;
  }
  file.inode->now.resize(static_cast<std::size_t>(size));
  file.inode->pending.push_back({static_cast<std::size_t>(size), std::nullopt});
  return file.disk->outcome(SQLITE_IOERR_TRUNCATE);
}

int sync_file(sqlite3_file* handle, int) {
  File& file = of(handle);
  switch (file.disk->next()) {
    case State::Go::cut:
      return SQLITE_IOERR_FSYNC;
    case State::Go::refuse:
      return SQLITE_IOERR_FSYNC;
    case State::Go::on:
      break;
  }
  // Cut in the middle of a sync: nothing of it is certain yet.
  if (file.disk->cut) return SQLITE_IOERR_FSYNC;
  file.inode->durable = file.inode->now;
  file.inode->pending.clear();
  if (file.syncs_names) {
    // The sync of the folder is a second operation, and the power can go between the two.
    file.syncs_names = false;
    if (file.disk->next() != State::Go::on || file.disk->cut) return SQLITE_IOERR_DIR_FSYNC;
    file.disk->sync_names();
  }
  return SQLITE_OK;
}

int file_size(sqlite3_file* handle, sqlite3_int64* size) {
  *size = static_cast<sqlite3_int64>(of(handle).inode->now.size());
  return SQLITE_OK;
}

int file_control(sqlite3_file*, int, void*) { return SQLITE_NOTFOUND; }

int sector_size(sqlite3_file* handle) { return static_cast<int>(of(handle).disk->habits.sector); }

int characteristics(sqlite3_file* handle) {
  return of(handle).disk->habits.spares_neighbours ? SQLITE_IOCAP_POWERSAFE_OVERWRITE : 0;
}

const sqlite3_io_methods k_methods = {1,
                                      close_file,
                                      read_file,
                                      write_file_at,
                                      truncate_file,
                                      sync_file,
                                      file_size,
                                      lock_file,
                                      unlock_file,
                                      check_reserved,
                                      file_control,
                                      sector_size,
                                      characteristics,
                                      nullptr,
                                      nullptr,
                                      nullptr,
                                      nullptr,
                                      nullptr,
                                      nullptr};

int open_file(sqlite3_vfs* vfs, const char* name, sqlite3_file* handle, int flags, int* granted) {
  State& disk = of(vfs);
  handle->pMethods = nullptr;
  if (disk.cut) return SQLITE_CANTOPEN;
  const std::string key = name == nullptr ? "" : name;
  auto found = disk.now.find(key);
  const bool there = name != nullptr && found != disk.now.end();
  if (there && (flags & SQLITE_OPEN_EXCLUSIVE) != 0) return SQLITE_CANTOPEN;
  if (!there && (flags & SQLITE_OPEN_CREATE) == 0) return SQLITE_CANTOPEN;
  std::shared_ptr<Inode> inode = there ? found->second : std::make_shared<Inode>();
  bool fresh = false;
  if (!there && name != nullptr) {
    switch (disk.next()) {
      case State::Go::cut:
        return SQLITE_CANTOPEN;
      case State::Go::refuse:
        return SQLITE_CANTOPEN;
      case State::Go::on:
        break;
    }
    disk.now[key] = inode;
    disk.pending_names.push_back({key, inode});
    if (disk.cut) return SQLITE_CANTOPEN;
    fresh = true;
  }
  auto* holder = new std::shared_ptr<Inode>(inode);
  const bool safety_file = (flags & (SQLITE_OPEN_MAIN_JOURNAL | SQLITE_OPEN_SUPER_JOURNAL)) != 0;
  of(handle) =
      File{{&k_methods}, &disk, inode.get(), holder, SQLITE_LOCK_NONE, fresh && safety_file};
  if (granted != nullptr) *granted = flags;
  return SQLITE_OK;
}

int delete_file(sqlite3_vfs* vfs, const char* name, int sync_folder) {
  State& disk = of(vfs);
  if (disk.cut) return SQLITE_IOERR_DELETE;
  if (!disk.now.contains(name)) return SQLITE_IOERR_DELETE_NOENT;
  switch (disk.next()) {
    case State::Go::cut:
      return SQLITE_IOERR_DELETE;
    case State::Go::refuse:
      return SQLITE_IOERR_DELETE;
    case State::Go::on:
      break;
  }
  disk.now.erase(name);
  disk.pending_names.push_back({name, nullptr});
  if (disk.cut) return SQLITE_IOERR_DELETE;
  if (sync_folder != 0) {
    if (disk.next() != State::Go::on || disk.cut) return SQLITE_IOERR_DIR_FSYNC;
    disk.sync_names();
  }
  return SQLITE_OK;
}

int access_file(sqlite3_vfs* vfs, const char* name, int, int* answer) {
  const State& disk = of(vfs);
  *answer = disk.now.contains(name) ? 1 : 0;
  return disk.cut ? SQLITE_IOERR_ACCESS : SQLITE_OK;
}

int full_name(sqlite3_vfs*, const char* name, int size, char* into) {
  sqlite3_snprintf(size, into, "%s", name);
  return SQLITE_OK;
}

int no_sleep(sqlite3_vfs*, int microseconds) { return microseconds; }

}  // namespace

ForgetfulDisk::ForgetfulDisk(std::uint64_t seed, Habits habits)
    : state_(std::make_unique<State>()) {
  static std::atomic<int> count{0};
  state_->name = "forgetful-" + std::to_string(++count);
  state_->habits = habits;
  state_->random.seed(seed);
  // Clock, randomness and the like come from the system's own layer.
  state_->vfs = *sqlite3_vfs_find(nullptr);
  sqlite3_vfs& vfs = state_->vfs;
  vfs.iVersion = 1;
  vfs.szOsFile = sizeof(File);
  vfs.mxPathname = 1000;
  vfs.pNext = nullptr;
  vfs.zName = state_->name.c_str();
  vfs.pAppData = state_.get();
  vfs.xOpen = open_file;
  vfs.xDelete = delete_file;
  vfs.xAccess = access_file;
  vfs.xFullPathname = full_name;
  vfs.xSleep = no_sleep;
  sqlite3_vfs_register(&vfs, 0);
}

ForgetfulDisk::~ForgetfulDisk() { sqlite3_vfs_unregister(&state_->vfs); }

const std::string& ForgetfulDisk::name() const { return state_->name; }
std::int64_t ForgetfulDisk::operations() const { return state_->operations; }
void ForgetfulDisk::cut_at(std::int64_t operation) { state_->cut_at = operation; }
bool ForgetfulDisk::is_cut() const { return state_->cut; }
void ForgetfulDisk::refuse(Refusal refusal) {
  state_->refusal = refusal;
  state_->refused = 0;
}
bool ForgetfulDisk::has_refused() const { return state_->refused > 0; }

void ForgetfulDisk::leave_behind(const std::filesystem::path& folder) {
  state_->cut = true;
  // Sometimes nearly all arrives, sometimes nearly nothing; in between it is a toss.
  constexpr double k_shares[] = {0.0, 0.1, 0.5, 0.5, 0.9, 1.0};
  const double kept = k_shares[state_->random() % std::size(k_shares)];
  const double kept_names = k_shares[state_->random() % std::size(k_shares)];
  for (const auto& [name, inode] : state_->names_left(kept_names)) {
    const Bytes left = state_->remains_of(*inode, kept);
    std::ofstream out(folder / std::filesystem::path(name).filename(), std::ios::binary);
    out.write(reinterpret_cast<const char*>(left.data()),
              static_cast<std::streamsize>(left.size()));
  }
}

}  // namespace wm::record::test

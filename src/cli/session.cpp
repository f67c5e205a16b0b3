#include "cli/session.hpp"

#include <date/date.h>
#include <fmt/core.h>

#include <chrono>
#include <ctime>
#include <random>

#include "calculation/json_face.hpp"
#include "calculation/text_face.hpp"
#include "calculation/toml_face.hpp"
#include "cli/arguments.hpp"
#include "service/api.hpp"

namespace wm::cli {

binder::Now clock_now() {
  const auto now = std::chrono::system_clock::now();
  const std::time_t seconds = std::chrono::system_clock::to_time_t(now);
  std::tm local{};
  (void)localtime_r(&seconds, &local);
  // WM_TODAY is for tests and screenshots that must come out the same on any day.
  if (const char* fixed = std::getenv("WM_TODAY"); fixed != nullptr) {
    if (const auto day = quantity::parse_date(fixed)) {
      return {std::string(fixed) + "T12:00:00Z", *day};
    }
  }
  return {date::format("%FT%TZ", std::chrono::floor<std::chrono::milliseconds>(now)),
          quantity::Date{std::chrono::year{local.tm_year + 1900},
                         std::chrono::month{static_cast<unsigned>(local.tm_mon) + 1},
                         std::chrono::day{static_cast<unsigned>(local.tm_mday)}}};
}

std::string new_id() {
  std::random_device random;
  std::string out;
  for (int i = 0; i < 4; ++i) out += fmt::format("{:08x}", random());
  return out;
}

quantity::UnitSet unit_set(const Options& options) {
  return options.units == "si" ? quantity::UnitSet::si : quantity::UnitSet::us_customary;
}

int show_problems(const Problems& problems, const Options& options) {
  if (options.json) {
    fmt::print("{}\n", calculation::write_problems(problems));
  } else {
    fmt::print(stderr, "{}\n", calculation::problems_text(problems));
  }
  return k_bad_input;
}

std::unique_ptr<binder::Binder> open_binder(const Options& options, record::Access access) {
  if (const auto missing = no_binder(options.binder)) {
    show_problems({*missing}, options);
    return nullptr;
  }
  if (const auto folder = is_a_folder(options.binder)) {
    show_problems({*folder}, options);
    return nullptr;
  }
  auto opened = binder::Binder::open(options.binder, access);
  if (opened) return std::move(*opened);
  auto problem = opened.error();
  const bool named = problem.what.find(options.binder) != std::string::npos;
  if (problem.path.empty() && !named) problem.path = options.binder;
  show_problems({problem}, options);
  return nullptr;
}

bool choose_aircraft(binder::Binder& binder, Options& options) {
  if (!options.aircraft.empty()) return true;
  std::vector<std::string> names;
  binder.look([&](const bay::State& state) {
    for (const auto& [id, aircraft] : state.aircraft) names.push_back(id);
  });
  if (names.size() == 1) {
    options.aircraft = names.front();
    return true;
  }
  std::string list;
  for (const auto& name : names) list += (list.empty() ? "" : ", ") + name;
  show_problems(
      {{Kind::missing,
        "aircraft",
        names.empty() ? "there is no aircraft in this binder" : "which aircraft is meant?",
        names.empty() ? "an aircraft sheet taken in first" : "--aircraft with one of: " + list,
        names.empty() ? "witnessmark import SHEET --into BINDER" : "--aircraft " + names.front(),
        {},
        {}}},
      options);
  return false;
}

binder::InputReader from_words(std::vector<std::string> words, std::string aircraft) {
  return [words = std::move(words), aircraft = std::move(aircraft)](const describe::Type& type,
                                                                    void* out) mutable {
    std::vector<std::string> all = words;
    const bool whole = all.size() == 1 && all.front().starts_with("{");
    bool given = whole;
    for (const auto& word : all) given = given || word.starts_with("aircraft=");
    if (!given && !aircraft.empty() && describe::find_field(type, "aircraft") != nullptr) {
      all.push_back("aircraft=" + aircraft);
    }
    const std::vector<std::string_view> views(all.begin(), all.end());
    return calculation::read_key_values(views, type, out);
  };
}

int call_act(binder::Binder& binder, const std::string& name, const binder::InputReader& input,
             const Options& options, std::string_view sheet) {
  binder::ActCall call;
  call.name = name;
  call.id = options.id.empty() ? new_id() : options.id;
  call.happened = options.on;
  call.author = options.by;
  call.device = "command line";
  call.try_only = options.try_only;
  const auto reply = binder.act(call, input, clock_now(), unit_set(options));
  if (!reply) {
    auto problems = reply.error();
    // Those of reading have their places already.
    if (!sheet.empty() && !problems.front().what.starts_with("line "))
      calculation::add_places(sheet, problems);
    return show_problems(problems, options);
  }
  const calculation::WriteOptions write{unit_set(options), {}, false};
  const int status = calculation::is_finding(*reply->type, reply->value.get()) ? k_finding : k_done;
  if (options.json) {
    fmt::print("{}\n", service::act_json(*reply, unit_set(options)));
    return status;
  }
  fmt::print("{}", calculation::write_text(*reply->type, reply->value.get(), write));
  for (const auto& caution : reply->cautions) fmt::print("caution: {}\n", caution.text);
  if (options.try_only) {
    fmt::print("Nothing was recorded (tried only).\n");
  } else if (!reply->recorded.empty()) {
    fmt::print("recorded: {} event{}, record at {} ({})\n", reply->recorded.size(),
               reply->recorded.size() == 1 ? "" : "s", reply->sequence, reply->head.substr(0, 16));
  }
  return status;
}

std::shared_ptr<void> call_view(binder::Binder& binder, const std::string& name,
                                std::vector<std::string> words, const Options& options,
                                int& status) {
  const auto reply = binder.view(name, from_words(std::move(words), options.aircraft), clock_now(),
                                 unit_set(options));
  if (!reply) {
    status = show_problems(reply.error(), options);
    return nullptr;
  }
  if (options.json) {
    const auto* entry = calculation::find_entry(calculation::Entry::Is::view, name);
    fmt::print("{}\n", service::view_json(*reply, entry->cautions, unit_set(options)));
  }
  status = calculation::is_finding(*reply->type, reply->value.get()) ? k_finding : k_done;
  return reply->value;
}

int show_view(binder::Binder& binder, const std::string& name, std::vector<std::string> words,
              const Options& options) {
  int status = k_done;
  const auto value = call_view(binder, name, std::move(words), options, status);
  if (value != nullptr && !options.json) {
    const auto* entry = calculation::find_entry(calculation::Entry::Is::view, name);
    fmt::print(
        "{}", calculation::write_text(*entry->output, value.get(), {unit_set(options), {}, false}));
    for (const auto& caution : entry->cautions) fmt::print("caution: {}\n", caution.text);
  }
  return status;
}

}  // namespace wm::cli

#include "service/server.hpp"

#include <fmt/core.h>
#include <httplib.h>

#include <atomic>
#include <cerrno>
#include <cstring>
#include <thread>

#include "service/detail/connections.hpp"
#include "service/detail/guard.hpp"
#include "service/detail/routes.hpp"
#include "service/detail/spool.hpp"
#include "service/detail/texts.hpp"

namespace wm::service {
namespace {

using detail::Answer;
using detail::Ask;
using httplib::Request;
using httplib::Response;

constexpr std::size_t k_threads = 32;
constexpr std::size_t k_longest_path = 512;
constexpr std::size_t k_json_limit = std::size_t{4} << 20U;
constexpr int k_backlog = 128;
constexpr std::chrono::milliseconds k_look_for_stop_every{50};
constexpr std::chrono::milliseconds k_listen_in_turns_of{500};
constexpr std::chrono::seconds k_heartbeat{15};

constexpr const char* k_policy =
    "default-src 'self'; img-src 'self' blob: data:; frame-ancestors 'none'; "
    "base-uri 'none'; form-action 'self'";

Ask asked(const Request& request) {
  Ask ask;
  ask.path = request.path;
  ask.query = {request.params.begin(), request.params.end()};
  ask.header = [&request](const char* name) { return request.get_header_value(name); };
  return ask;
}

/// Hand an answer to the wire. A length-known provider gives bytes out as they are, without a
/// copy; one that ends in "no" ends the connection, which nothing else in this library does.
void put(Answer answer, Response& response) {
  // Where all is well the library itself chooses between the whole and the part that was asked for.
  if (answer.status != 200) response.status = answer.status;
  for (const auto& [name, value] : answer.headers) {
    response.headers.erase(name);
    response.set_header(name, value);
  }
  if (answer.status == 304) return;
  if (answer.close && !answer.body.empty()) {
    const auto size = answer.body.size();
    response.set_content_provider(
        size, answer.type,
        [body = std::move(answer.body)](std::size_t, std::size_t, httplib::DataSink& sink) {
          sink.write(body.data(), body.size());
          return false;
        });
    return;
  }
  if (!answer.fixed.empty()) {
    response.set_content_provider(
        answer.fixed.size(), answer.type,
        [bytes = answer.fixed](std::size_t from, std::size_t count, httplib::DataSink& sink) {
          return sink.write(bytes.data() + from, count);
        });
    return;
  }
  response.body = std::move(answer.body);
  response.set_header("Content-Type", answer.type);
}

/// A body has one length, given in one way; only POST has a body at all. The library would leave
/// the body of another method unread and take it for the next question.
bool length_is_plain(const Request& request) {
  const auto lengths = request.get_header_value_count("Content-Length");
  const auto codings = request.get_header_value_count("Transfer-Encoding");
  if (lengths + codings == 0) return true;
  if (lengths + codings > 1) return false;
  if (codings == 1)
    return request.method == "POST" && request.get_header_value("Transfer-Encoding") == "chunked";
  const auto length = request.get_header_value("Content-Length");
  const bool digits = !length.empty() && length.size() < 16 &&
                      length.find_first_not_of("0123456789") == std::string::npos;
  return digits && (request.method == "POST" || length == "0");
}

Answer closing(Answer answer) {
  answer.close = true;
  return answer;
}

class Server {
 public:
  Server(binder::Binder& binder, const Settings& settings)
      : settings_(settings),
        changes_([&binder] { return binder.last(); }),
        routes_(binder, settings, changes_) {
    set_limits();
    set_routes();
  }

  Result<int> run(const std::function<void(const std::string&)>& ready);

 private:
  void set_limits();
  void set_routes();
  [[nodiscard]] std::optional<Answer> refused(const Request& request) const;
  Answer take(const Request& request, const httplib::ContentReader& reader);
  Answer take_json(Ask ask, const httplib::ContentReader* reader);
  Answer take_attachment(const httplib::ContentReader* reader);
  void open_stream(const Request& request, Response& response);
  [[nodiscard]] Problem cannot_listen(int error) const;
  [[nodiscard]] std::string address() const;
  void watch(const std::atomic<bool>& ended);

  const Settings& settings_;
  detail::Changes changes_;
  detail::Routes routes_;
  httplib::Server http_;
  int port_{};
  socket_t listening_{INVALID_SOCKET};
};

void Server::set_limits() {
  http_.new_task_queue = [] { return new httplib::ThreadPool(k_threads); };
  http_.set_keep_alive_max_count(1'000'000);
  http_.set_keep_alive_timeout(5);
  http_.set_read_timeout(10);
  http_.set_write_timeout(10);
  http_.set_tcp_nodelay(true);
  http_.set_payload_max_length(static_cast<std::size_t>(record::k_attachment_limit));
  // The library would let a second server take the same port (SO_REUSEPORT) and share its calls.
  http_.set_socket_options([this](socket_t made) {
    const int yes = 1;
    setsockopt(made, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof(yes));
    listening_ = made;
  });
  http_.set_default_headers({{"Content-Security-Policy", k_policy},
                             {"X-Content-Type-Options", "nosniff"},
                             {"X-Frame-Options", "DENY"},
                             {"Referrer-Policy", "no-referrer"},
                             {"Cross-Origin-Resource-Policy", "same-origin"},
                             {"Cross-Origin-Opener-Policy", "same-origin"}});
}

/// Everything that is refused before a body is read, so that the connection ends with it: what is
/// left unread of a body must never be taken for the next question.
std::optional<Answer> Server::refused(const Request& request) const {
  using detail::refusal;
  const auto host = request.get_header_value("Host");
  if (request.get_header_value_count("Host") != 1 ||
      !detail::host_is_ours(host, settings_.host, port_)) {
    return refusal(403, Kind::refused, "this server is not called by that name",
                   "Open " + address() + " instead.");
  }
  if (request.has_header("Origin") &&
      !detail::origin_is_ours(request.get_header_value("Origin"), host)) {
    return refusal(403, Kind::refused, "another web page asked; only this server's own page may");
  }
  if (request.method != "GET" && request.method != "HEAD" && request.method != "POST") {
    auto answer = refusal(405, Kind::refused, "only GET and POST are understood here");
    answer.headers = {{"Allow", "GET, HEAD, POST"}};
    return answer;
  }
  if (!length_is_plain(request))
    return refusal(400, Kind::bad_text, "the length of the body is not stated plainly");
  if (request.path.size() > k_longest_path)
    return refusal(414, Kind::out_of_bounds, "the address is too long");
  if (request.ranges.size() > 1)
    return refusal(416, Kind::refused, "only one part at a time is given out");
  if (request.method != "POST") return std::nullopt;
  if (request.get_header_value("X-Witnessmark") != "1") {
    return refusal(403, Kind::refused, "the header `X-Witnessmark: 1` is missing",
                   "Send it with every POST; a foreign web page cannot.");
  }
  if (request.path != "/api/attachment" &&
      !detail::is_json(request.get_header_value("Content-Type"))) {
    return refusal(415, Kind::bad_text, "JSON is needed", "Send `Content-Type: application/json`.");
  }
  return std::nullopt;
}

void Server::set_routes() {
  using Handled = httplib::Server::HandlerResponse;
  http_.set_pre_routing_handler([this](const Request& request, Response& response) {
    auto answer = refused(request);
    if (!answer) return Handled::Unhandled;
    put(closing(std::move(*answer)), response);
    return Handled::Handled;
  });
  http_.Get("[^]*", [this](const Request& request, Response& response) {
    if (request.path == "/api/changes") return open_stream(request, response);
    put(detail::answered([&] { return routes_.get(asked(request)); }, settings_.quiet), response);
  });
  http_.Post("[^]*", [this](const Request& request, Response& response,
                            const httplib::ContentReader& reader) {
    put(detail::answered([&] { return take(request, reader); }, settings_.quiet), response);
  });
  // What the library itself refuses (a broken request line, a header too long): in our form, and
  // with the end of the connection.
  http_.set_error_handler(
      httplib::Server::HandlerWithResponse([](const Request&, Response& response) {
        if (response.has_header("Content-Type")) return Handled::Unhandled;
        put(closing(detail::refusal(response.status, Kind::bad_text, "the request cannot be read")),
            response);
        return Handled::Handled;
      }));
}

Answer Server::take(const Request& request, const httplib::ContentReader& reader) {
  // A request that states no length has no body (RFC 9112, 6.3; from memory); the library would
  // wait for one.
  const bool has_body =
      request.has_header("Content-Length") || request.has_header("Transfer-Encoding");
  const auto* body = has_body ? &reader : nullptr;
  return request.path == "/api/attachment" ? take_attachment(body)
                                           : take_json(asked(request), body);
}

Answer Server::take_json(Ask ask, const httplib::ContentReader* reader) {
  bool too_large = false;
  const bool whole = reader == nullptr || (*reader)([&](const char* bytes, std::size_t count) {
                       too_large = too_large || ask.body.size() + count > k_json_limit;
                       if (!too_large) ask.body.append(bytes, count);
                       return true;  // read to its end, so that the sender gets the answer
                     });
  if (too_large) {
    return closing(detail::refusal(413, Kind::out_of_bounds, "the question is longer than 4 MiB",
                                   "Large matter goes to /api/attachment."));
  }
  if (!whole) {
    return closing(detail::refusal(400, Kind::bad_text, "the question did not arrive whole",
                                   "Send it again."));
  }
  return routes_.post(ask);
}

Answer Server::take_attachment(const httplib::ContentReader* reader) {
  detail::Spool spool;
  bool room = true;
  bool too_large = false;
  const bool whole = reader == nullptr || (*reader)([&](const char* bytes, std::size_t count) {
                       too_large = too_large || spool.size() + static_cast<std::int64_t>(count) >
                                                    record::k_attachment_limit;
                       if (!too_large && room) room = spool.add(bytes, count);
                       return true;
                     });
  // The library reads and drops what is announced as too long, and says only that it failed.
  if (too_large || (!whole && spool.size() == 0)) {
    return closing(detail::refusal(413, Kind::out_of_bounds,
                                   "an attachment may have at most 64 MiB", "Make it smaller."));
  }
  if (!whole) {
    return closing(detail::refusal(400, Kind::bad_text, "the attachment did not arrive whole",
                                   "Send it again."));
  }
  return routes_.attach(spool.source());
}

void Server::open_stream(const Request& request, Response& response) {
  if (!changes_.join()) {
    auto answer = detail::refusal(503, Kind::refused, "as many pages are listening as there may be",
                                  "Ask a view now and then instead.");
    answer.headers = {{"Retry-After", "15"}, {"Cache-Control", "no-store"}};
    return put(std::move(answer), response);
  }
  auto text = request.get_header_value("Last-Event-ID");
  if (text.empty()) text = request.get_param_value("after");
  response.set_header("Cache-Control", "no-store");
  response.set_chunked_content_provider(
      "text/event-stream",
      [this, after = std::strtoll(text.c_str(), nullptr, 10), greeted = false,
       spoke = std::chrono::steady_clock::now()](std::size_t, httplib::DataSink& sink) mutable {
        const auto say = [&](const std::string& words) {
          spoke = std::chrono::steady_clock::now();
          return sink.write(words.data(), words.size());
        };
        if (!greeted) {
          greeted = true;
          return say("retry: 1000\n: here\n\n");
        }
        const auto head = changes_.wait_beyond(after, k_listen_in_turns_of);
        if (changes_.stopping()) {
          sink.done();
          return true;
        }
        if (head) {
          after = head->sequence;
          return say(fmt::format("id: {}\nevent: recorded\ndata: {}\n\n", after,
                                 detail::head_json(*head)));
        }
        if (std::chrono::steady_clock::now() - spoke >= k_heartbeat) return say(": beat\n\n");
        return sink.is_writable();
      },
      [this](bool) { changes_.leave(); });
}

std::string Server::address() const {
  const bool six = settings_.host.find(':') != std::string::npos;
  return six ? fmt::format("http://[{}]:{}/", settings_.host, port_)
             : fmt::format("http://{}:{}/", settings_.host, port_);
}

Problem Server::cannot_listen(int error) const {
  const auto problem = [&](Kind kind, std::string what, std::string do_next) {
    return Problem{kind, "port", std::move(what), {}, {}, std::move(do_next), {}};
  };
  if (error == EADDRINUSE) {
    return problem(Kind::conflict,
                   fmt::format("port {} is in use by another program, or by a Witnessmark that "
                               "still runs",
                               settings_.port),
                   fmt::format("Stop that one, or choose another: --port {}.",
                               settings_.port < 65535 ? settings_.port + 1 : 8480));
  }
  if (error == EACCES || error == EPERM) {
    return problem(Kind::refused,
                   fmt::format("this user may not listen on port {}", settings_.port),
                   "Choose a port from 1024 up.");
  }
  return problem(
      Kind::not_found,
      fmt::format("this machine cannot listen at `{}`, port {}{}", settings_.host, settings_.port,
                  error == 0 ? "" : fmt::format(" ({})", std::strerror(error))),
      "Give an address of this machine; 127.0.0.1 serves this machine alone.");
}

/// Ends the server when the door wants it, and with it the connections that only wait for more.
void Server::watch(const std::atomic<bool>& ended) {
  bool stopping = false;
  while (!ended) {
    if (!stopping && http_.is_running() && settings_.stop_wanted && settings_.stop_wanted()) {
      stopping = true;
      changes_.stop();
      http_.stop();
    }
    if (stopping) detail::hang_up(port_);
    std::this_thread::sleep_for(k_look_for_stop_every);
  }
}

Result<int> Server::run(const std::function<void(const std::string&)>& ready) {
  if (settings_.port < 0 || settings_.port > 65535) {
    return Fail(Kind::out_of_bounds, fmt::format("{} is not a port", settings_.port),
                "a whole number from 0 to 65535", "8480");
  }
  errno = 0;
  port_ = settings_.port == 0 ? http_.bind_to_any_port(settings_.host)
          : http_.bind_to_port(settings_.host, settings_.port) ? settings_.port
                                                               : -1;
  if (port_ <= 0) return Fail(cannot_listen(errno));
  // A page opens a dozen connections at once; the library keeps room for five.
  ::listen(listening_, k_backlog);
  std::atomic<bool> ended = false;
  std::thread watcher([&] { watch(ended); });
  if (ready) ready(address());
  http_.listen_after_bind();
  ended = true;
  watcher.join();
  return 0;
}

}  // namespace

Result<int> serve(binder::Binder& binder, const Settings& settings,
                  const std::function<void(const std::string& address)>& ready) {
  Server server(binder, settings);
  return server.run(ready);
}

}  // namespace wm::service

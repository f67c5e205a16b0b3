#pragma once
/// Every address of the API but the event stream, free of the wire.

#include "service/detail/changes.hpp"
#include "service/detail/exchange.hpp"
#include "service/server.hpp"

namespace wm::service::detail {

class Routes {
 public:
  Routes(binder::Binder& binder, const Settings& settings, Changes& changes)
      : binder_(binder), settings_(settings), changes_(changes) {}

  [[nodiscard]] Answer get(const Ask& ask);
  /// JSON in `ask.body`.
  [[nodiscard]] Answer post(const Ask& ask);
  /// Store an attachment; the caller has it on the disk already, so that a slow sender keeps
  /// nobody waiting.
  [[nodiscard]] Answer attach(const record::ChunkSource& source);

 private:
  using Parts = std::vector<std::string_view>;
  [[nodiscard]] Answer get_api(const Ask& ask, const Parts& parts);
  [[nodiscard]] Answer verify(const Ask& ask);
  [[nodiscard]] Answer attachment(const Ask& ask, std::string_view hash);
  [[nodiscard]] Answer sheet(std::string_view file);
  [[nodiscard]] Answer print(const Ask& ask, std::string_view kind, std::string_view file);
  [[nodiscard]] describe::Context calculation_context() const;
  [[nodiscard]] Answer calculate(const std::string& name, const std::string& body);
  /// A calculation drawn, or its file for another program.
  [[nodiscard]] Answer drawn(const std::string& name, const Ask& ask);
  [[nodiscard]] Answer look(const std::string& name, const std::string& body);
  [[nodiscard]] Answer act(const std::string& name, const std::string& body);

  binder::Binder& binder_;
  const Settings& settings_;
  Changes& changes_;
};

}  // namespace wm::service::detail

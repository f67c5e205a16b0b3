#pragma once
/// The JSON texts of the API that no other face writes.

#include <string>
#include <string_view>

#include "binder/binder.hpp"
#include "record/verify.hpp"
#include "service/detail/exchange.hpp"

namespace wm::service::detail {

/// {calculations, acts, views}: what there is, by name and purpose.
[[nodiscard]] std::string catalogue_json();
[[nodiscard]] std::string event_json(const record::StoredEvent& event);
[[nodiscard]] std::string verification_json(const record::Verification& found,
                                            const record::Head& last);
[[nodiscard]] std::string head_json(const record::Head& head);

/// Problems with the status that fits them: 409 when the record says otherwise, 500 when its
/// bytes do not agree, else 422.
[[nodiscard]] Answer problems_answer(const Problems& problems);
/// One problem with a status of its own.
[[nodiscard]] Answer refusal(int status, Kind kind, std::string what, std::string do_next = {});
/// 404.
[[nodiscard]] Answer not_here(std::string what);

/// Run a route. Every exception of a broken machine ends here: 503 for the disk (with what to do
/// about it; nothing was acknowledged), 500 for anything else, never its inner text.
[[nodiscard]] Answer answered(const std::function<Answer()>& route, bool quiet);

}  // namespace wm::service::detail

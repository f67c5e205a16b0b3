#pragma once
/// The connections of a server that is being stopped.

namespace wm::service::detail {

/// Tell every connection of this process that was accepted on a port that no more will be read
/// from it. One that waits for its next question ends at once instead of after its time; an
/// answer that is being written is still written.
void hang_up(int port);

}  // namespace wm::service::detail

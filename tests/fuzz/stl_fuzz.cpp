// Any bytes as an STL file: triangles or a problem, never a crash; a closed surface or an edge.
#include "hose/stl.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace wm::hose;
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const auto triangles = read_stl(bytes, 0.001, {0, 0, 0}, {});
  if (triangles) (void)open_edge(*triangles, {});
  return 0;
}

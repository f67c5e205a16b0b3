#include "record/digest.hpp"

#include <array>
#include <cstddef>

#include <sodium/crypto_hash_sha256.h>

namespace wm::record {
namespace {

using Hash = std::array<unsigned char, crypto_hash_sha256_BYTES>;

std::string hex_of(const Hash& hash) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string text;
  text.reserve(2 * hash.size());
  for (const unsigned char byte : hash) {
    text.push_back(digits[byte >> 4U]);
    text.push_back(digits[byte & 15U]);
  }
  return text;
}

const unsigned char* raw(const void* bytes) { return static_cast<const unsigned char*>(bytes); }

}  // namespace

std::string sha256_hex(std::string_view bytes) {
  Hash hash{};
  crypto_hash_sha256(hash.data(), raw(bytes.data()), bytes.size());
  return hex_of(hash);
}

struct Sha256::State {
  crypto_hash_sha256_state inner{};
};

Sha256::Sha256() : state_(std::make_unique<State>()) { crypto_hash_sha256_init(&state_->inner); }
Sha256::~Sha256() = default;
Sha256::Sha256(Sha256&&) noexcept = default;
Sha256& Sha256::operator=(Sha256&&) noexcept = default;

void Sha256::add(std::span<const std::byte> bytes) {
  crypto_hash_sha256_update(&state_->inner, raw(bytes.data()), bytes.size());
}

void Sha256::add(std::string_view bytes) {
  crypto_hash_sha256_update(&state_->inner, raw(bytes.data()), bytes.size());
}

std::string Sha256::finish_hex() {
  Hash hash{};
  crypto_hash_sha256_final(&state_->inner, hash.data());
  crypto_hash_sha256_init(&state_->inner);
  return hex_of(hash);
}

}  // namespace wm::record

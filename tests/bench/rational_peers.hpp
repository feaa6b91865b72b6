// Rational and its peers behind one face, so that each runs through the same loops.
#pragma once

#include <boost/rational.hpp>
#include <cstdint>
#include <string>

#ifdef SCALEPAN_PEER_FLINT
#include <flint/fmpq.h>
#endif
#ifdef SCALEPAN_PEER_GMP
#include <gmpxx.h>
#endif

#include "exact/rational.hpp"

namespace peers {

struct Scalepan {
  static constexpr const char* name = "scalepan";
  using Number = scalepan::Rational;
  static void add(Number& out, const Number& a, const Number& b) { out = a + b; }
  static void multiply(Number& out, const Number& a, const Number& b) { out = a * b; }
  static void add_product(Number& out, const Number& a, const Number& b) { out += a * b; }
};

/// Unchecked: wraps silently where a part leaves 64 bits.
struct BoostInt64 {
  static constexpr const char* name = "boost_int64";
  using Number = boost::rational<std::int64_t>;
  static void add(Number& out, const Number& a, const Number& b) { out = a + b; }
  static void multiply(Number& out, const Number& a, const Number& b) { out = a * b; }
  static void add_product(Number& out, const Number& a, const Number& b) { out += a * b; }
};

#ifdef SCALEPAN_PEER_FLINT
class FlintNumber {
 public:
  FlintNumber() { fmpq_init(value_); }
  FlintNumber(std::int64_t numerator, std::int64_t denominator) {
    fmpq_init(value_);
    fmpq_set_si(value_, numerator, static_cast<ulong>(denominator));
  }
  FlintNumber(const FlintNumber& other) {
    fmpq_init(value_);
    fmpq_set(value_, other.value_);
  }
  FlintNumber& operator=(const FlintNumber& other) {
    fmpq_set(value_, other.value_);
    return *this;
  }
  ~FlintNumber() { fmpq_clear(value_); }

  fmpq* get() { return value_; }
  [[nodiscard]] const fmpq* get() const { return value_; }

 private:
  fmpq_t value_;
};

struct Flint {
  static constexpr const char* name = "flint";
  using Number = FlintNumber;
  static void add(Number& out, const Number& a, const Number& b) {
    fmpq_add(out.get(), a.get(), b.get());
  }
  static void multiply(Number& out, const Number& a, const Number& b) {
    fmpq_mul(out.get(), a.get(), b.get());
  }
  static void add_product(Number& out, const Number& a, const Number& b) {
    fmpq_addmul(out.get(), a.get(), b.get());
  }
};
#endif

#ifdef SCALEPAN_PEER_GMP
class GmpNumber : public mpq_class {
 public:
  GmpNumber() = default;
  GmpNumber(std::int64_t numerator, std::int64_t denominator)
      : mpq_class(std::to_string(numerator) + "/" + std::to_string(denominator)) {
    canonicalize();
  }
};

struct Gmp {
  static constexpr const char* name = "gmp";
  using Number = GmpNumber;
  static void add(Number& out, const Number& a, const Number& b) {
    mpq_add(out.get_mpq_t(), a.get_mpq_t(), b.get_mpq_t());
  }
  static void multiply(Number& out, const Number& a, const Number& b) {
    mpq_mul(out.get_mpq_t(), a.get_mpq_t(), b.get_mpq_t());
  }
  static void add_product(Number& out, const Number& a, const Number& b) {
    mpq_class& sum = out;
    sum += a * b;
  }
};
#endif

}  // namespace peers

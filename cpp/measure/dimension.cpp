#include "measure/dimension.hpp"

#include <algorithm>
#include <array>
#include <atomic>
#include <deque>
#include <map>
#include <memory>
#include <mutex>

#include "exact/error.hpp"
#include "measure/currency.hpp"

namespace scalepan {

namespace {

struct StageText {
  Stage stage;
  std::string_view symbol;
  std::string_view name;
};

constexpr std::array<StageText, 5> stage_texts{{
    {Stage::as_purchased, "AP", "as purchased"},
    {Stage::edible, "EP", "edible portion"},
    {Stage::cooked, "cooked", "cooked"},
    {Stage::drained, "drained", "drained"},
    {Stage::served, "served", "served"},
}};

constexpr std::array<std::string_view, base::first_stage> fixed_symbols{"g",       "cm",   "s",
                                                                        "portion", "load", "piece"};

std::vector<Factor> merged(std::vector<Factor> factors) {
  std::sort(factors.begin(), factors.end());
  std::vector<Factor> result;
  for (const Factor& factor : factors) {
    if (!result.empty() && result.back().first == factor.first) {
      result.back().second += factor.second;
    } else {
      result.push_back(factor);
    }
  }
  std::erase_if(result, [](const Factor& factor) { return factor.second == 0; });
  for (const Factor& factor : result) {
    if (std::abs(factor.second) > Dimension::most_power) {
      fail("unit.power",
           "a power of " + std::to_string(factor.second) + " of " +
               std::string(factor.first.symbol()) + " is too high",
           "at most " + std::to_string(Dimension::most_power));
    }
  }
  return result;
}

void add_symbol(std::string& text, std::string_view symbol, int power) {
  if (!text.empty()) text += ' ';
  text += symbol;
  if (power != 1) text += "^" + std::to_string(power);
}

/// Volumes are written in mL, which is the coherent cubic centimetre.
void add_factor(std::string& text, Base base, int power) {
  if (base == base::length && power % 3 == 0) {
    add_symbol(text, "mL", power / 3);
  } else {
    add_symbol(text, base.symbol(), power);
  }
}

std::string symbol_of_factors(const std::vector<Factor>& factors) {
  std::string above;
  std::string below;
  int count_below = 0;
  for (const auto& [base, power] : factors) {
    add_factor(power > 0 ? above : below, base, std::abs(power));
    if (power < 0) ++count_below;
  }
  if (below.empty()) return above;
  if (above.empty()) above = "1";
  return above + "/" + (count_below > 1 ? "(" + below + ")" : below);
}

std::string name_of_kind(const std::vector<Factor>& kind, const std::string& symbol) {
  if (kind.empty()) return "plain number";
  if (kind.size() != 1) return symbol;
  const auto& [base, power] = kind.front();
  if (base == base::length && power == 3) return "volume";
  if (power != 1) return symbol;
  if (base == base::mass) return "weight";
  if (base == base::length) return "length";
  if (base == base::time) return "time";
  if (base == base::piece) return "count";
  if (base.currency()) return "money in " + std::string(base.symbol());
  return "number of " + std::string(base.symbol()) + "s";
}

std::string name_of_factors(const std::vector<Factor>& factors, const std::string& symbol) {
  std::vector<Factor> kind;
  std::vector<Factor> stages;
  for (const Factor& factor : factors) {
    (factor.first.stage() == Stage::none ? kind : stages).push_back(factor);
  }
  if (stages.empty()) return name_of_kind(kind, symbol);
  if (stages.size() > 1 || stages.front().second != 1 || kind.size() != 1) return symbol;
  return name_of_kind(kind, symbol) + " " + std::string(stages.front().first.symbol());
}

}  // namespace

std::string_view symbol_of(Stage stage) {
  for (const StageText& text : stage_texts) {
    if (text.stage == stage) return text.symbol;
  }
  return {};
}

std::string_view name_of(Stage stage) {
  for (const StageText& text : stage_texts) {
    if (text.stage == stage) return text.name;
  }
  return "no stage";
}

std::optional<Stage> stage_named(std::string_view symbol) {
  for (const StageText& text : stage_texts) {
    if (text.symbol == symbol) return text.stage;
  }
  return std::nullopt;
}

Base Base::of(Stage stage) {
  return Base(static_cast<std::uint16_t>(base::first_stage + static_cast<int>(stage) - 1));
}

Base Base::of_currency(std::size_t index) {
  return Base(static_cast<std::uint16_t>(base::first_currency + index));
}

std::optional<std::size_t> Base::currency() const {
  if (index_ < base::first_currency) return std::nullopt;
  return static_cast<std::size_t>(index_ - base::first_currency);
}

Stage Base::stage() const {
  if (index_ < base::first_stage || index_ >= base::first_currency) return Stage::none;
  return static_cast<Stage>(index_ - base::first_stage + 1);
}

std::string_view Base::symbol() const {
  if (index_ < base::first_stage) return fixed_symbols[index_];
  if (const auto index = currency()) return currency_at(*index).code;
  return symbol_of(stage());
}

/// All dimensions there are. Entries never move and never go, so a reader needs no lock.
class Dimension::Pool {
 public:
  static Pool& shared() {
    static Pool pool;
    return pool;
  }

  const Data* intern(std::vector<Factor> factors) {
    const std::scoped_lock lock(mutex_);
    const auto found = by_factors_.find(factors);
    if (found != by_factors_.end()) return found->second;
    Data& data = entries_.emplace_back();
    data.id = static_cast<std::uint32_t>(entries_.size() - 1);
    data.symbol = symbol_of_factors(factors);
    data.name = name_of_factors(factors, data.symbol);
    data.factors = std::move(factors);
    by_factors_.emplace(data.factors, &data);
    return &data;
  }

  const Data* product(const Data* a, const Data* b) {
    const bool tabled = a->id < table_side && b->id < table_side;
    std::atomic<const Data*>* slot = tabled ? &(*products_)[a->id * table_side + b->id] : nullptr;
    if (slot != nullptr) {
      if (const Data* known = slot->load(std::memory_order_acquire)) return known;
    }
    std::vector<Factor> factors = a->factors;
    factors.insert(factors.end(), b->factors.begin(), b->factors.end());
    const Data* result = intern(merged(std::move(factors)));
    if (slot != nullptr) slot->store(result, std::memory_order_release);
    return result;
  }

 private:
  static constexpr std::size_t table_side = 128;

  std::mutex mutex_;
  std::deque<Data> entries_;
  std::map<std::vector<Factor>, const Data*> by_factors_;
  std::unique_ptr<std::array<std::atomic<const Data*>, table_side * table_side>> products_ =
      std::make_unique<std::array<std::atomic<const Data*>, table_side * table_side>>();
};

Dimension::Dimension() {
  static const Data* const number = Pool::shared().intern({});
  data_ = number;
}

Dimension::Dimension(std::vector<Factor> factors)
    : data_(Pool::shared().intern(merged(std::move(factors)))) {}

int Dimension::power_of(Base base) const {
  for (const Factor& factor : factors()) {
    if (factor.first == base) return factor.second;
  }
  return 0;
}

Stage Dimension::stage() const {
  Stage found = Stage::none;
  for (const auto& [base, power] : factors()) {
    if (base.stage() == Stage::none) continue;
    if (found != Stage::none || power != 1) return Stage::none;
    found = base.stage();
  }
  return found;
}

bool Dimension::has_stages() const {
  return std::ranges::any_of(factors(),
                             [](const Factor& f) { return f.first.stage() != Stage::none; });
}

Dimension Dimension::without_stages() const {
  std::vector<Factor> kept = factors();
  std::erase_if(kept, [](const Factor& factor) { return factor.first.stage() != Stage::none; });
  return Dimension(std::move(kept));
}

std::optional<std::size_t> Dimension::currency() const {
  if (factors().size() != 1 || factors().front().second != 1) return std::nullopt;
  return factors().front().first.currency();
}

Dimension operator*(Dimension a, Dimension b) {
  return Dimension(Dimension::Pool::shared().product(a.data_, b.data_));
}

Dimension operator/(Dimension a, Dimension b) { return a * b.power(-1); }

Dimension Dimension::power(int exponent) const {
  std::vector<Factor> raised = factors();
  for (Factor& factor : raised) factor.second *= exponent;
  return Dimension(std::move(raised));
}

namespace dimension {

Dimension mass() {
  static const Dimension result(base::mass);
  return result;
}

Dimension length() {
  static const Dimension result(base::length);
  return result;
}

Dimension volume() {
  static const Dimension result = length().power(3);
  return result;
}

Dimension time() {
  static const Dimension result(base::time);
  return result;
}

Dimension piece() {
  static const Dimension result(base::piece);
  return result;
}

Dimension portion() {
  static const Dimension result(base::portion);
  return result;
}

}  // namespace dimension

}  // namespace scalepan

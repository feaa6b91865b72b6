#include "bindings/archive_shared.hpp"

#include <mutex>
#include <utility>

namespace scalepan::bindings {

namespace {

/// Catalogues that were read and are still held, by the bytes they were read from. Its lock is
/// never held while one is made, which may wait for the interpreter's.
class CatalogsHeld {
 public:
  /// Null where there is none.
  std::shared_ptr<const Catalog> get(const std::string& bytes) {
    const std::lock_guard lock(mutex_);
    const auto found = held_.find(bytes);
    return found == held_.end() ? nullptr : found->second.lock();
  }

  /// The one that was there first.
  std::shared_ptr<const Catalog> keep(const std::string& bytes,
                                      std::shared_ptr<const Catalog> made) {
    const std::lock_guard lock(mutex_);
    std::erase_if(held_, [](const auto& one) { return one.second.expired(); });
    std::weak_ptr<const Catalog>& held = held_[bytes];
    if (auto first = held.lock()) return first;
    held = made;
    return made;
  }

 private:
  std::mutex mutex_;
  std::map<std::string, std::weak_ptr<const Catalog>> held_;
};

/// For what holds nothing that others share.
class NoneBeside final : public Beside {
 public:
  void give(Shared /*kind*/, const std::shared_ptr<const void>& /*object*/) override {}
  std::shared_ptr<const void> take(Shared /*kind*/) override { fail_damaged(); }
  std::shared_ptr<const Catalog> base(const std::string& /*name*/) override { fail_damaged(); }
};

}  // namespace

void pass(Archive& archive, std::shared_ptr<const RecipeFile>& value) {
  if (!archive.compares()) pass_own(archive, value);
}

void pass(Archive& archive, std::shared_ptr<const RecipeInput>& value) { pass_own(archive, value); }

void pass(Archive& archive, std::optional<Ramp>& value) {
  bool there = value.has_value();
  pass(archive, there);
  if (!there) return;
  std::vector<Ramp::Point> points;
  std::optional<Rational> further;
  if (!archive.reads()) {
    // The first is (0, 0).
    points.assign(value->points().begin() + 1, value->points().end());
    further = value->further();
  }
  pass(archive, points);
  pass(archive, further);
  if (archive.reads()) value = Ramp(std::move(points), std::move(further));
}

CatalogState state_of(const Catalog& catalog) { return {catalog.base(), catalog.changes()}; }

std::shared_ptr<const Catalog> catalog_of(CatalogState state, Beside& beside) {
  const std::shared_ptr<const Catalog> base = beside.base(state.base);
  if (state.changes.empty()) return base;
  auto made = std::make_shared<Catalog>(*base);
  for (CatalogChange& change : state.changes) made->make(std::move(change));
  return made;
}

std::string digest_of(const Catalog& catalog) {
  CatalogState state = state_of(catalog);
  NoneBeside none;
  Archive archive(Purpose::keeping, none);
  pass(archive, state);
  return digits_of(archive.written());
}

void pass(Archive& archive, Catalog& value) {
  std::shared_ptr<const Catalog> seen(std::shared_ptr<void>(), &value);
  pass(archive, seen);
  if (archive.reads()) value = *seen;
}

void pass(Archive& archive, WordColumn& value) {
  pass(archive, value.step);
  const std::size_t size = archive.length(value.size, 1);
  if (archive.reads()) value.counts = word_array(size);
  value.size = size;
  for (std::size_t i = 0; i < size; ++i) pass(archive, value.counts[i]);
}

void pass(Archive& archive, std::shared_ptr<const WordColumn>& value) { pass_own(archive, value); }

void pass(Archive& archive, BasketRow& row) {
  pass(archive, static_cast<ShoppingRow&>(row));
  pass(archive, row.dishes);
}

void pass(Archive& archive, std::shared_ptr<const Catalog>& value) {
  std::string bytes;
  if (!archive.reads()) {
    Archive inner(archive.compares() ? Purpose::comparing : Purpose::keeping, archive.beside());
    // However it was made.
    CatalogState state = archive.compares() ? CatalogState{"", value->content()} : state_of(*value);
    pass(inner, state);
    bytes = std::move(inner.written());
  }
  archive.text(bytes);
  if (!archive.reads()) return;
  static CatalogsHeld held;
  value = held.get(bytes);
  if (value != nullptr) return;
  Archive inner(bytes, archive.beside());
  CatalogState state;
  pass(inner, state);
  inner.expect_end();
  // A base may be changed by who else has it: it is asked for anew each time.
  const bool is_base = state.changes.empty();
  value = catalog_of(std::move(state), archive.beside());
  if (!is_base) value = held.keep(bytes, std::move(value));
}

}  // namespace scalepan::bindings

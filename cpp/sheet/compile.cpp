#include "sheet/compile.hpp"

#include <utility>

#include "exact/error.hpp"
#include "sheet/parser.hpp"
#include "sheet/shapes.hpp"

namespace scalepan {

namespace {

bool is_one_sign(const std::vector<Instruction>& code) {
  return code.size() == 2 && code[0].operation == Operation::load &&
         code[1].operation >= Operation::add && code[1].operation <= Operation::nearest_multiple &&
         code[1].operand != Operand::current;
}

}  // namespace

/// What is kept from formula to formula.
class Compiler::Shapes {
 public:
  Formula compile(std::string_view text, const Names& names, const FunctionTable& functions) {
    const bool whole = scan_.read(text, names, units_);
    const std::size_t hash = whole ? scan_.hash() : 0;
    std::shared_ptr<const Programme> programme = whole ? table_.find(hash, scan_) : nullptr;
    if (!programme) {
      programme = parsed(text, names, functions);
      table_.add(hash, programme);
    }
    return {std::move(programme), scan_.cells()};
  }

 private:
  std::shared_ptr<const Programme> parsed(std::string_view text, const Names& names,
                                          const FunctionTable& functions) {
    auto programme = std::make_shared<Programme>();
    parser_.parse(text, scan_, functions, names, units_, *programme);
    programme->input_types = scan_.types();
    programme->shape = scan_.shape();
    programme->occurrences = scan_.occurrences();
    for (const ValueType& type : programme->input_types) {
      programme->numeric = programme->numeric && type.is_number();
    }
    programme->one_sign = programme->numeric && is_one_sign(programme->code);
    return programme;
  }

  UnitMemo units_;
  Scan scan_;
  Parser parser_;
  ShapeTable table_;
};

Compiler::Compiler(std::shared_ptr<const FunctionTable> functions)
    : functions_(std::move(functions)), shapes_(std::make_unique<Shapes>()) {}
Compiler::Compiler(Compiler&& other) noexcept = default;
Compiler& Compiler::operator=(Compiler&& other) noexcept = default;
Compiler::~Compiler() = default;

Formula Compiler::compile(std::string_view text, const Names& names) {
  if (text.size() > longest_formula) {
    fail("formula.long",
         "the formula has " + std::to_string(text.size()) + " characters, and at most " +
             std::to_string(longest_formula) + " are read",
         "give parts of it names of their own");
  }
  return shapes_->compile(text, names, *functions_);
}

}  // namespace scalepan

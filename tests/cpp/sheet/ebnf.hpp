// A grammar in the notation of ISO/IEC 14977, read from a page: it tells which texts are sentences,
// and makes some.
//
// In part one spaces may stand between items, and must where words would run together.
#pragma once

#include <cctype>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <random>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace scalepan::ebnf {

enum class Kind { literal, rule, special, sequence, choice, repeat, except };

struct Node {
  Kind kind = Kind::sequence;
  std::string text{};  // of a literal and a special sequence; the name of a rule
  std::vector<Node> parts{};
};

struct Rule {
  Node node;
  bool is_word = false;
};

/// What `? ... ?` stands for, which the notation leaves to words.
struct Special {
  /// The end of one that starts there, or the place itself.
  std::size_t (*end)(std::string_view text, std::size_t at);
  std::vector<std::string> some;
};
using Specials = std::map<std::string, Special>;

inline bool in_word(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '.';
}

/// Reads `name = definition ;` rules. `(* Part two` begins the words.
class Grammar {
 public:
  Grammar(std::string_view text, Specials specials) : text_(text), specials_(std::move(specials)) {
    for (skip(); at_ < text_.size(); skip()) {
      const std::string name = identifier();
      expect('=');
      rules_[name] = {definition(), in_words_};
      expect(';');
    }
    for (const auto& [name, rule] : rules_) check(rule.node);
  }

  [[nodiscard]] const Rule& rule(const std::string& name) const { return rules_.at(name); }
  [[nodiscard]] const Special& special(const std::string& text) const { return specials_.at(text); }

 private:
  void check(const Node& node) const {
    if (node.kind == Kind::rule && !rules_.contains(node.text)) {
      throw std::runtime_error("no rule " + node.text);
    }
    for (const Node& part : node.parts) check(part);
  }

  void skip() {
    while (at_ < text_.size()) {
      if (text_.substr(at_).starts_with("(*")) {
        in_words_ = in_words_ || text_.substr(at_).starts_with("(* Part two");
        at_ = text_.find("*)", at_) + 2;
      } else if (std::isspace(static_cast<unsigned char>(text_[at_])) != 0) {
        ++at_;
      } else {
        return;
      }
    }
  }
  char peek() {
    skip();
    return at_ < text_.size() ? text_[at_] : '\0';
  }
  void expect(char c) {
    if (peek() != c) throw std::runtime_error("expected " + std::string(1, c));
    ++at_;
  }
  std::string identifier() {
    std::string name;
    while (at_ < text_.size() && (std::isalpha(text_[at_]) != 0 || text_[at_] == '_')) {
      name += text_[at_++];
    }
    if (name.empty()) throw std::runtime_error("expected a name");
    return name;
  }

  Node definition() {
    Node node{Kind::choice};
    do {
      node.parts.push_back(sequence());
    } while (peek() == '|' && ++at_ != 0);
    return node;
  }
  Node sequence() {
    Node node{Kind::sequence};
    do {
      node.parts.push_back(term());
    } while (peek() == ',' && ++at_ != 0);
    return node;
  }
  Node term() {
    Node node = primary();
    if (peek() != '-') return node;
    ++at_;
    return {Kind::except, "", {std::move(node), primary()}};
  }
  Node primary() {
    const char c = peek();
    if (c == '"' || c == '\'' || c == '?') {
      const std::size_t end = text_.find(c, at_ + 1);
      std::string inside(text_.substr(at_ + 1, end - at_ - 1));
      if (c == '?') inside = inside.substr(1, inside.size() - 2);  // without its spaces
      Node node{c == '?' ? Kind::special : Kind::literal, inside};
      at_ = end + 1;
      return node;
    }
    if (c == '(') return bracketed(')');
    if (c == '{') return {Kind::repeat, "", {bracketed('}')}};
    if (c == '[') {
      Node node = bracketed(']');
      node.parts.push_back({Kind::sequence});
      return node;
    }
    return {Kind::rule, identifier()};
  }

  Node bracketed(char close) {
    ++at_;
    Node inner = definition();
    expect(close);
    return inner;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  bool in_words_ = false;
  Specials specials_;
  std::map<std::string, Rule> rules_;
};

/// Finds all ends of each part from each place once, so that it takes no guess back. For grammars
/// whose rules do not begin with themselves.
class Recogniser {
 public:
  Recogniser(const Grammar& grammar, std::string_view text) : grammar_(grammar), text_(text) {}

  [[nodiscard]] bool derives(const std::string& rule) {
    for (const std::size_t end : ends_of_rule(rule, 0)) {
      if (spaces_end(end) == text_.size()) return true;
    }
    return false;
  }

 private:
  using Ends = std::set<std::size_t>;

  [[nodiscard]] std::size_t spaces_end(std::size_t at) const {
    while (at < text_.size() && text_[at] == ' ') ++at;
    return at;
  }
  /// Where a word may begin, after spaces.
  [[nodiscard]] std::optional<std::size_t> word_start(std::size_t at) const {
    const std::size_t start = spaces_end(at);
    const bool runs_together =
        start == at && at > 0 && at < text_.size() && in_word(text_[at - 1]) && in_word(text_[at]);
    if (runs_together) return std::nullopt;
    return start;
  }

  Ends ends_of_rule(const std::string& name, std::size_t at) {
    const auto key = std::pair{name, at};
    if (const auto known = ends_.find(key); known != ends_.end()) return known->second;
    const Rule& rule = grammar_.rule(name);
    return ends_[key] = ends(rule.node, at, rule.is_word);
  }

  Ends ends(const Node& node, std::size_t at, bool in_words) {
    switch (node.kind) {
      case Kind::literal: {
        const auto start = in_words ? at : word_start(at);
        if (!start || !text_.substr(*start).starts_with(node.text)) return {};
        return {*start + node.text.size()};
      }
      case Kind::rule: {
        const bool enters_word = !in_words && grammar_.rule(node.text).is_word;
        const auto start = enters_word ? word_start(at) : at;
        return start ? ends_of_rule(node.text, *start) : Ends{};
      }
      case Kind::special: {
        const std::size_t end = grammar_.special(node.text).end(text_, at);
        return end == at ? Ends{} : Ends{end};
      }
      case Kind::choice: {
        Ends all;
        for (const Node& part : node.parts) all.merge(ends(part, at, in_words));
        return all;
      }
      case Kind::repeat:
        return repeated(node.parts[0], at, in_words);
      case Kind::except: {
        Ends all = ends(node.parts[0], at, in_words);
        for (const std::size_t end : ends(node.parts[1], at, in_words)) all.erase(end);
        return all;
      }
      default:
        return in_sequence(node, at, in_words);
    }
  }
  Ends in_sequence(const Node& node, std::size_t at, bool in_words) {
    Ends here{at};
    for (const Node& part : node.parts) {
      Ends next;
      for (const std::size_t from : here) next.merge(ends(part, from, in_words));
      here = std::move(next);
    }
    return here;
  }
  Ends repeated(const Node& node, std::size_t at, bool in_words) {
    Ends all{at};
    for (Ends fresh{at}; !fresh.empty();) {
      Ends next;
      for (const std::size_t from : fresh) {
        for (const std::size_t end : ends(node, from, in_words)) {
          if (all.insert(end).second) next.insert(end);
        }
      }
      fresh = std::move(next);
    }
    return all;
  }

  const Grammar& grammar_;
  std::string_view text_;
  std::map<std::pair<std::string, std::size_t>, Ends> ends_;
};

/// Makes sentences; one that has grown long enough is brought to an end.
class Maker {
 public:
  /// `given`: what some words are to be half of the time.
  Maker(const Grammar& grammar, std::uint32_t seed,
        std::map<std::string, std::vector<std::string>> given)
      : grammar_(grammar), random_(seed), given_(std::move(given)) {}

  std::string sentence(const std::string& rule) {
    text_.clear();
    budget_ = 60;
    while (true) {
      try {
        text_.clear();
        of_rule(rule, 0);
        return text_;
      } catch (const std::length_error&) {
        budget_ = 60;
      }
    }
  }

 private:
  std::uint32_t pick(std::size_t below) { return static_cast<std::uint32_t>(random_() % below); }

  void of_rule(const std::string& name, int depth) {
    if (--budget_ < -4000) throw std::length_error("too long");
    const Rule& rule = grammar_.rule(name);
    if (!rule.is_word) return of(rule.node, depth + 1);
    add_word(word(name));
  }
  /// In part one.
  void of(const Node& node, int depth) {
    switch (node.kind) {
      case Kind::literal:
        return add_word(node.text);
      case Kind::rule:
        return of_rule(node.text, depth);
      case Kind::choice:
        return of(chosen(node, depth), depth);
      case Kind::repeat:
        while (budget_ > 0 && pick(4) == 0) of(node.parts[0], depth);
        return;
      default:
        for (const Node& part : node.parts) of(part, depth);
    }
  }
  /// Deep down, words and empty parts rather than rules that go deeper.
  const Node& chosen(const Node& node, int depth) {
    const Node& any = node.parts[pick(node.parts.size())];
    if (depth < 40 && budget_ > 0) return any;
    for (const Node& part : node.parts) {
      if (part.parts.empty()) return part;
    }
    return node.parts.front();
  }
  void add_word(const std::string& word) {
    const bool needs_space =
        !text_.empty() && !word.empty() && in_word(text_.back()) && in_word(word.front());
    text_ += std::string(needs_space ? 1 + pick(2) : pick(3), ' ') + word;
  }

  std::string word(const std::string& name) {
    const auto given = given_.find(name);
    if (given != given_.end() && pick(2) == 0) return given->second[pick(given->second.size())];
    return letters_of(grammar_.rule(name).node);
  }
  std::string letters_of(const Node& node) {
    switch (node.kind) {
      case Kind::literal:
        return node.text;
      case Kind::special: {
        const std::vector<std::string>& some = grammar_.special(node.text).some;
        return some[pick(some.size())];
      }
      case Kind::rule:
        return word(node.text);
      case Kind::choice:
        return letters_of(node.parts[pick(node.parts.size())]);
      case Kind::repeat: {
        std::string text;
        while (pick(3) == 0) text += letters_of(node.parts[0]);
        return text;
      }
      case Kind::except:
        while (true) {
          const std::string text = letters_of(node.parts[0]);
          if (!Recogniser(grammar_, text).derives(node.parts[1].text)) return text;
        }
      default: {
        std::string text;
        for (const Node& part : node.parts) text += letters_of(part);
        return text;
      }
    }
  }

  const Grammar& grammar_;
  std::mt19937 random_;
  std::map<std::string, std::vector<std::string>> given_;
  std::string text_;
  int budget_ = 0;
};

}  // namespace scalepan::ebnf

#include "sheet/meet.hpp"

#include <utility>

#include "sheet/stretch.hpp"

namespace scalepan {

namespace {

class Search {
 public:
  Search(Path path, const Rational& target) : runner_(std::move(path)), target_(target) {}

  Meetings between(const Rational& low, const Rational& high, const SweepPulse& pulse) {
    Rational at = low;
    for (std::size_t stretches = 0;; ++stretches) {
      if (stretches % 256 == 0) pulse(stretches);
      if (stretches == most_stretches) fail_many();
      look_at(at);
      if (at >= high) return std::move(meetings_);
      const PathStretch stretch = stretch_beyond(runner_.path(), at);
      const Rational end = stretch.end && *stretch.end < high ? *stretch.end : high;
      if (stretch.output) look_between(at, end, *stretch.output);
      at = end;
    }
  }

 private:
  [[noreturn]] void fail_many() const {
    fail("sheet.many",
         runner_.path().output_names.front() + " turns more than " +
             std::to_string(most_stretches) + " times between these values of " +
             runner_.path().input_name,
         "look between values that lie closer together");
  }

  void look_at(const Rational& input) {
    runner_.run(input);
    const Cell output = runner_.path().outputs.front();
    if (!runner_.figures().is_number(output)) return;
    const Rational& figure = runner_.figures().number(output);
    if (figure == target_) {
      add({input, input, true, true});
    } else {
      note_missed(input, figure);
    }
  }

  void note_missed(const Rational& input, const Rational& figure) {
    std::optional<Missed>& side = figure < target_ ? meetings_.below : meetings_.above;
    const bool nearer = !side || (figure < target_ ? figure > side->figure : figure < side->figure);
    if (nearer) side = Missed{input, figure};
  }

  void look_between(const Rational& low, const Rational& high, const RatioForm& output) {
    if (output.is_constant()) {
      if (output.number() == target_) {
        add({low, high, false, false});
      } else {
        note_missed((low + high) / Rational(2), output.number());
      }
      return;
    }
    const auto where = output.where(target_);
    if (where && *where > low && *where < high) add({*where, *where, true, true});
  }

  /// What touches the last one goes on it.
  void add(const Meeting& meeting) {
    if (!meetings_.found.empty()) {
      Meeting& last = meetings_.found.back();
      if (last.to == meeting.from && (last.to_meets || meeting.from_meets)) {
        last.to = meeting.to;
        last.to_meets = meeting.to_meets;
        return;
      }
    }
    meetings_.found.push_back(meeting);
  }

  PathRunner runner_;
  Rational target_;
  Meetings meetings_;
};

}  // namespace

Meetings meetings_of(Path path, const Rational& target, const Rational& low, const Rational& high,
                     const SweepPulse& pulse) {
  const std::string input = path.input_name;
  const std::string output = path.output_names.front();
  try {
    return Search(std::move(path), target).between(low, high, pulse);
  } catch (const NoForm& reason) {
    fail("sheet.no_form",
         "how " + output + " follows from " + input + " cannot be turned round: " + reason.reason,
         "sweep " + input + " over the values that come into question");
  }
}

}  // namespace scalepan

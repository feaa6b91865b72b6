#include "sheet/meet.hpp"

#include <utility>

#include "sheet/stretch.hpp"

namespace scalepan {

namespace {

class Search {
 public:
  Search(Path path, const Rational& target, Aim aim)
      : runner_(std::move(path)), target_(target), aim_(aim) {}

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
    if (meets(figure)) {
      add({input, input, true, true});
    } else {
      note_missed(input, figure);
    }
  }

  [[nodiscard]] bool meets(const Rational& figure) const {
    if (aim_ == Aim::at_most) return figure <= target_;
    if (aim_ == Aim::at_least) return figure >= target_;
    return figure == target_;
  }

  void note_missed(const Rational& input, const Rational& figure) {
    std::optional<Missed>& side = figure < target_ ? meetings_.below : meetings_.above;
    const bool nearer = !side || (figure < target_ ? figure > side->figure : figure < side->figure);
    if (nearer) side = Missed{input, figure};
  }

  void look_between(const Rational& low, const Rational& high, const RatioForm& output) {
    if (output.is_constant()) {
      if (meets(output.number())) {
        add({low, high, false, false});
      } else {
        note_missed((low + high) / Rational(2), output.number());
      }
      return;
    }
    const auto where = output.where(target_);
    const bool inside = where && *where > low && *where < high;
    if (aim_ == Aim::equal) {
      if (inside) add({*where, *where, true, true});
      return;
    }
    const int first = (output - RatioForm::constant(target_)).sign_beyond(low);
    const bool begins = first == (aim_ == Aim::at_most ? -1 : 1);
    if (!inside) {
      if (begins) add({low, high, false, false});
    } else if (begins) {
      add({low, *where, false, true});
    } else {
      add({*where, high, true, false});
    }
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
  Aim aim_;
  Meetings meetings_;
};

}  // namespace

Meetings meetings_of(Path path, const Rational& target, const Rational& low, const Rational& high,
                     Aim aim, const SweepPulse& pulse) {
  const std::string input = path.input_name;
  const std::string output = path.output_names.front();
  try {
    return Search(std::move(path), target, aim).between(low, high, pulse);
  } catch (const NoForm& reason) {
    fail("sheet.no_form",
         "how " + output + " follows from " + input + " cannot be turned round: " + reason.reason,
         "sweep " + input + " over the values that come into question");
  }
}

}  // namespace scalepan

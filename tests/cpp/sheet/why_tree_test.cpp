#include "catch.hpp"
#include "sheet/sheets.hpp"

using namespace scalepan;

TEST_CASE("sheet/why: as HTML a tree opens and closes, and names and sources are no markup") {
  const auto sheet = sheet_of({Set{"oats", amount("2 kg"), "<b>a & \"b\"</b>"},
                               Define{"more", "if oats > 1 kg then oats * 2 else oats"}});
  CHECK(html_of(sheet->why("more")) ==
        "<div class=\"scalepan-why\"><details open><summary><b>more</b> = 4 kg "
        "<code>= if oats &gt; 1 kg then oats * 2 else oats</code></summary><ul>"
        "<li><b>oats</b> = 2 kg <small>[&lt;b&gt;a &amp; &quot;b&quot;&lt;/b&gt;]</small></li>"
        "</ul></details></div>");
}

TEST_CASE("sheet/why: a deep way is told so far, and said to go on") {
  std::vector<Change> changes{Set{"n0", number(0)}};
  for (int i = 1; i <= 200; ++i) {
    changes.emplace_back(Define{"n" + std::to_string(i), "n" + std::to_string(i - 1) + " + 1"});
  }
  const std::string text = text_of(sheet_of(changes)->why("n200"));
  CHECK(text.find("n140 = 140\n") != std::string::npos);
  CHECK(text.find("n139 = 139\n") != std::string::npos);
  CHECK(text.find("= ...\n") != std::string::npos);
  CHECK(text.find("n138 = ") == std::string::npos);
}

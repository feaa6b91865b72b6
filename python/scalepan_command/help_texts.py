"""What the help says beside the arguments: the jobs in their order, and examples that run.

The examples use the files that ``scalepan new`` writes, and those of the examples before them. The
first that runs a command also stands for it where all commands are listed.
"""

from __future__ import annotations

GROUPS = (
    ("To begin", ("new", "check", "read")),
    ("The dish at another size", ("scale", "page", "measure", "loads", "convert")),
    ("Buying", ("buy", "shops", "break-even", "swap", "make-or-buy", "basket")),
    ("Costs and prices", ("cost", "why", "curve", "spend", "price")),
    (
        "Your own figures, and what is kept",
        ("foods", "yield", "refresh", "sheet", "sheet-difference"),
    ),
    ("Other forms of files", ("write",)),
    ("The terminal", ("completion",)),
)

_BAKE = "fennel_bake.toml"
_SAUCE = 'bean_pot.toml sauce "canned tomato sauce"'
_BOUGHT = f"{_BAKE} --prices prices.csv"

EXAMPLES = {
    "new": ("scalepan new night_kitchen", "scalepan new late_watch --json"),
    "check": ("scalepan check", f"scalepan check {_BAKE} prices.csv", "scalepan check --json"),
    "read": (
        'scalepan read "1 lb 4 oz carrots, peeled"',
        'scalepan read "1,5 kg Lauch" --decimal comma',
    ),
    "scale": (
        f"scalepan scale {_BAKE} --portions 40",
        f'scalepan scale {_BAKE} --tray "GN 1/1 65" --trays 2',
        f'scalepan scale {_BAKE} --stock "fennel=3 kg AP" --volumes "metric spoons and jug"',
    ),
    "page": (
        f"scalepan page {_BAKE} --portions 40",
        f'scalepan page {_BAKE} --portions 40 --volumes "us spoons and cups"',
        f"scalepan page {_BAKE} --portions 40 --html kitchen.html",
    ),
    "measure": (
        'scalepan measure "47/12 tbsp" "us spoons and cups" --measures us',
        'scalepan measure "172.3 g" "scales 5 g"',
        'scalepan measure "90 g" "metric spoons and jug" --food "olive oil"',
    ),
    "loads": (
        'scalepan loads "13 kg" "4 kg" --time "30 min"',
        'scalepan loads "13 L" "GN 1/1 65" --equal',
    ),
    "convert": (
        'scalepan convert "2 cup" g --food "granulated sugar" --measures us',
        'scalepan convert "1 kg AP" "g EP" --food carrots',
        'scalepan convert "1 kg AP" "g EP" --food fennel --facts facts.csv',
    ),
    "buy": (
        f"scalepan buy {_BOUGHT} --portions 40",
        f"scalepan buy {_BOUGHT} --portions 40 --on-hand larder.csv",
        f'scalepan buy {_BOUGHT} --portions 40 --shop "village shop"',
    ),
    "shops": (
        f"scalepan shops {_BOUGHT} --portions 40",
        f"scalepan shops {_BOUGHT} --portions 12 --json",
    ),
    "break-even": (
        f"scalepan break-even {_BAKE} onions --prices prices.csv",
        f"scalepan break-even {_BAKE} eggs --prices prices.csv --portions 40",
    ),
    "swap": (
        f'scalepan swap {_BOUGHT} --swap "butter_beans = 240 g chickpeas, drained"',
        f'scalepan swap {_BOUGHT} --swap "fennel = 700 g leeks, trimmed" --rank borne',
    ),
    "make-or-buy": (
        f"scalepan make-or-buy {_SAUCE} --prices prices.csv",
        f"scalepan make-or-buy {_SAUCE} --prices prices.csv --portions 40",
    ),
    "basket": (
        "scalepan basket open_night.toml --prices prices.csv",
        "scalepan basket open_night.toml --prices prices.csv --on-hand larder.csv",
        "scalepan basket open_night.toml --prices prices.csv --why till",
    ),
    "cost": (
        f"scalepan cost {_BOUGHT} --portions 40",
        f"scalepan cost {_BOUGHT} --portions 40 --facts facts.csv",
        f"scalepan cost {_BOUGHT} --portions 40 --save forty.toml",
    ),
    "why": (
        f"scalepan why {_BAKE} fennel.buy --prices prices.csv --portions 40",
        f"scalepan why {_BAKE} borne --prices prices.csv",
    ),
    "curve": (
        f"scalepan curve {_BOUGHT} --portions 1:60",
        f"scalepan curve {_BOUGHT} --portions 1:60 --plot curve.png",
    ),
    "spend": (
        f'scalepan spend {_BOUGHT} --most "50 EUR"',
        f"scalepan spend {_BOUGHT} --portions 40",
    ),
    "price": (
        f'scalepan price {_BOUGHT} --food-cost "30 %" --tax "7 %"',
        f'scalepan price {_BOUGHT} --portions 40 --food-cost "30 %" --ending 0.90',
    ),
    "foods": ("scalepan foods fennel", "scalepan foods fennel --facts facts.csv"),
    "yield": (
        'scalepan yield fennel_trials.csv --portion "150 g"',
        "scalepan yield fennel_trials.csv --as-facts > tested.csv",
    ),
    "refresh": (
        f"scalepan cost {_BOUGHT} --portions 40 --save forty.toml",
        "scalepan refresh forty.toml --prices prices.csv --facts facts.csv",
    ),
    "sheet": (
        f"scalepan cost {_BOUGHT} --portions 40 --save forty.toml",
        "scalepan sheet forty.toml",
        "scalepan sheet forty.toml fennel.buy --why",
    ),
    "sheet-difference": (
        f"scalepan cost {_BOUGHT} --portions 40 --save forty.toml",
        f"scalepan cost {_BOUGHT} --portions 60 --save sixty.toml",
        "scalepan sheet-difference forty.toml sixty.toml",
    ),
    "write": (
        f"scalepan write {_BAKE} bake.jsonld",
        "scalepan write bake.jsonld bake.toml --measures metric",
        "scalepan write prices.csv prices.json",
    ),
    "completion": (
        "scalepan completion bash > scalepan.bash",
        "scalepan completion zsh > _scalepan",
        "scalepan completion fish > scalepan.fish",
    ),
}

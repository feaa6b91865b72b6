"""Studies on Dask's schedulers, by ordinary pickled objects: the figures are the serial ones.

Skipped where Dask is not installed; ``pip install "dask[distributed]"``.
"""

from __future__ import annotations

from itertools import chain

import pytest
from price_study import borne, costings, pie

dask = pytest.importorskip("dask", reason="dask is not installed")
distributed = pytest.importorskip("distributed", reason="distributed is not installed")

COUNT = 10_000
BATCHES = [range(first, first + 250) for first in range(0, COUNT, 250)]
# Of the libraries' own affairs.
pytestmark = pytest.mark.filterwarnings("default")


def test_ten_thousand_costings_on_a_local_cluster_equal_those_of_one_process() -> None:
    recipe = pie()
    with (
        distributed.LocalCluster(
            n_workers=2, threads_per_worker=1, dashboard_address=None
        ) as cluster,
        distributed.Client(cluster) as client,
    ):
        found = list(chain(*client.gather(client.map(borne, BATCHES, recipe=recipe))))
        kept = client.submit(costings, range(20), recipe).result()
    alone = borne(range(COUNT), recipe)
    assert len(set(alone)) > COUNT // 10  # prices did move
    assert found == alone
    # Costings themselves come back whole.
    assert [costing.borne.value for costing in kept] == alone[:20]
    assert kept[3].why("leeks.buy") == costings(range(3, 4), recipe)[0].why("leeks.buy")


@pytest.mark.parametrize("scheduler", ["synchronous", "threads", "processes"])
def test_the_local_schedulers_give_the_same(scheduler: str) -> None:
    recipe = pie()
    pieces = [dask.delayed(borne)(batch, recipe) for batch in BATCHES[:8]]
    found = list(chain(*dask.compute(*pieces, scheduler=scheduler, num_workers=2)))
    assert found == borne(range(2000), recipe)

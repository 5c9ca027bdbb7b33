"""Sizes are told as the guidance has them, to clinicians."""

from itertools import pairwise

import pytest

from coachbot.programme.sizes import CAPSULES, Caution, Ladder, Size, capsule_cautions, tablet_cautions


def test_capsules_grow_from_5_to_000() -> None:
    """In volume, length and width; makers' tables that are shifted by a size would not."""
    for smaller, larger in pairwise(CAPSULES.values()):
        assert smaller.volume_ml < larger.volume_ml
        assert smaller.size.length_mm < larger.size.length_mm
        assert smaller.size.width_mm <= larger.size.width_mm


@pytest.mark.parametrize(
    ("length", "cautions"),
    [
        (16.9, ()),
        (17, (Caution.NO_LARGER,)),
        (22, (Caution.NO_LARGER,)),
        (22.1, (Caution.OVER_LARGEST, Caution.NO_LARGER)),
    ],
)
def test_tablets_meet_the_limits_of_2015(length: float, cautions: tuple[Caution, ...]) -> None:
    """FDA (2015): no larger from 17 mm on, at most 22 mm."""
    assert tablet_cautions(Size(length_mm=length, width_mm=8)) == cautions


def test_capsule_limit_is_by_name_not_by_length() -> None:
    """Size 00 is the largest allowed, though 23.5 mm are over 22; 000 is over both."""
    assert Caution.OVER_LARGEST_CAPSULE not in capsule_cautions("00")
    assert Caution.OVER_LARGEST in capsule_cautions("00")
    assert Caution.OVER_LARGEST_CAPSULE in capsule_cautions("00el")
    assert capsule_cautions("3") == ()


def test_ladder_rises_from_candy_to_target() -> None:
    """Growth is told step by step."""
    candy, target = Size(length_mm=8, width_mm=8), Size(length_mm=16, width_mm=8)
    ladder = Ladder(candy=candy, steps=(Size(length_mm=10, width_mm=8),), target=target)

    assert ladder.growth == pytest.approx((1.25, 1.6))


@pytest.mark.parametrize("steps", [(Size(length_mm=18, width_mm=8),), (Size(length_mm=10, width_mm=7),)])
def test_ladder_that_goes_down_is_refused(steps: tuple[Size, ...]) -> None:
    """Both sides count."""
    with pytest.raises(ValueError, match="rising order"):
        Ladder(candy=Size(length_mm=8, width_mm=8), steps=steps, target=Size(length_mm=16, width_mm=8))


def test_wrong_measures_are_refused() -> None:
    """With what to give instead."""
    with pytest.raises(ValueError, match="longest side"):
        Size(length_mm=5, width_mm=8)
    with pytest.raises(ValueError, match="choose from 5, 4"):
        capsule_cautions("6")

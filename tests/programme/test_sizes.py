"""Sizes are told as the guidance has them, to clinicians."""

from itertools import pairwise

import pytest

from coachbot.programme.sizes import CAPSULES, Caution, Size, Target, capsule_cautions, tablet_cautions


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


def mm(length: float, width: float) -> Size:
    """A size."""
    return Size(length_mm=length, width_mm=width)


def test_steps_lead_from_the_candy_to_the_target() -> None:
    """Growth is told step by step; a capsule may be narrower than the candy before it."""
    target = Target(size=CAPSULES["3"].size, capsule="3", steps=(mm(10, 8), mm(12.5, 6)))

    assert target.growth(8) == pytest.approx((1.25, 1.25, 1.264))
    assert target.cautions == ()
    assert Target(size=mm(16, 8)).growth(8) == (2,)
    assert Target(size=mm(17, 8)).cautions == (Caution.NO_LARGER,)
    assert Target(size=CAPSULES["00el"].size, capsule="00el").cautions == capsule_cautions("00el")


@pytest.mark.parametrize("steps", [(mm(18, 8),), (mm(12, 8), mm(10, 8))])
def test_steps_that_go_down_are_refused(steps: tuple[Size, ...]) -> None:
    """From one to the next, and from the last to the target."""
    with pytest.raises(ValueError, match="rising order"):
        Target(size=mm(16, 8), steps=steps)


def test_wrong_measures_are_refused() -> None:
    """With what to give instead."""
    with pytest.raises(ValueError, match="longest side"):
        Size(length_mm=5, width_mm=8)
    with pytest.raises(ValueError, match="choose from 5, 4"):
        capsule_cautions("6")

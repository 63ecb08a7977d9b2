"""What is spoilt, and the test that must see it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Spoiling:
    """In `file` (below src/stylobate) the text `old`, which stands there once, becomes `new`; `test` must fail."""

    name: str
    file: str
    old: str
    new: str
    test: str


GUIDES = "tests/outside/test_uncertainty_guides.py"
CAUSES = "tests/unit/test_diagnose.py"
HIDDEN = "tests/recovery/test_hidden_marks.py"

SPOILINGS = (
    Spoiling(
        "covariance × 1.2 in the weighted pose",
        "uncertainty/field.py",
        "np.linalg.inv(information), dtype=np.float64)",
        "1.2 * np.linalg.inv(information), dtype=np.float64)",
        f"{GUIDES}::test_gum_h3_line_and_its_prediction",
    ),
    Spoiling(
        "covariance × 1.2 in the diagnosis",
        "diagnose/evidence.py",
        "    gain = covariance @ half.T\n",
        "    covariance = 1.2 * covariance\n    gain = covariance @ half.T\n",
        f"{CAUSES}::test_freeing_a_shape_is_fitting_it_with_the_pose",
    ),
    Spoiling(
        "a term of the Jacobian missing: turns move nothing",
        "fit/descend.py",
        " - p[(k + 2) % 3] * g[(k + 1) % 3]",
        "",
        "tests/unit/test_measuring_stages.py::test_rows_are_the_derivative_of_the_distance",
    ),
    Spoiling(
        "the bend's turning of sections missing",
        "diagnose/shapes.py",
        " - normal[:, 2:3] * points[:, :2] * turn[:, None]",
        "",
        "tests/unit/test_shapes.py::test_a_lean_is_the_derivative_of_a_bent_body",
    ),
    Spoiling(
        "degrees for radians in the play",
        "uncertainty/budget.py",
        "np.radians(connection.play_deg)",
        "np.asarray(connection.play_deg)",
        "tests/unit/test_verdict.py::test_figures_add_as_variances",
    ),
    Spoiling(
        "noise treated as white",
        "uncertainty/field.py",
        "sizes = self.correlated_sd**2,",
        "sizes = 1e-12 * self.correlated_sd**2,",
        f"{GUIDES}::test_effective_sample_size",
    ),
    Spoiling(
        "edge mask off: points beyond an open edge are used",
        "fit/descend.py",
        "(closest.face >= 0) & ~closest.on_boundary &",
        "(closest.face >= 0) &",
        "tests/unit/test_shapes.py::test_points_beyond_an_open_edge_are_not_usable",
    ),
    Spoiling(
        "variances added as standard deviations",
        "uncertainty/budget.py",
        "np.asarray(np.sum(covariances, axis=0))",
        "np.asarray(np.sum(np.sqrt(np.abs(covariances)), axis=0) ** 2)",
        f"{GUIDES}::test_jcgm_101_9_2_sum_of_four",
    ),
    Spoiling(
        "tests of a site not counted",
        "diagnose/significance.py",
        "return any_of(p, FAMILIES)",
        "return p / 50",
        f"{CAUSES}::test_clean_evidence_has_no_sign",
    ),
    Spoiling(
        "the field taken for known",
        "uncertainty/unsure.py",
        "return np.asarray(self.ratio @ covariance @ self.ratio.T + self.added)",
        "return covariance",
        "tests/unit/test_unsure.py::test_the_average_is_the_one_over_all_patches_and_fields",
    ),
    Spoiling(
        "the field's doubt by weights that no fit has",
        "uncertainty/pose.py",
        "rested.white.gain(np.asarray(np.linalg.inv(information), dtype=np.float64), factor)",
        "rested.white.gain(rested.covariance, factor)",
        "tests/unit/test_weighing_edges.py::test_another_minimum_of_the_turn_widens_what_is_stated_by_itself_alone",
    ),
    Spoiling(
        "other turns not tried",
        "choose/readings.py",
        "[:OTHER_TURNS]",
        "[:0]",
        "tests/unit/test_choose.py::test_every_wrong_turn_ends_at_the_true_one_or_nowhere",
    ),
    Spoiling(
        "a turn that chance rules out",
        "choose/turns.py",
        "TURN_STEP_DEG) else TURN_ODDS",
        "TURN_STEP_DEG) else LEAST_ODDS",
        "tests/unit/test_choose.py::test_a_turn_that_the_covariance_does_not_allow_needs_odds_of_a_million",
    ),
    Spoiling(
        "the gingiva has a say in the turn",
        "diagnose/diagnosing.py",
        "(places[:, 2] >= lowest + FILLET) & surroundings.above_gum(places, FILLET)",
        "(places[:, 2] >= lowest - FILLET)",
        f"{HIDDEN}::test_a_turn_that_no_mark_shows_is_not_called_sure",
    ),
    Spoiling(
        "a motion barred to one side taken for fixed",
        "uncertainty/pose.py",
        "added += (farthest**2 - 1.0)",
        "added += 0.0",
        f"{HIDDEN}::test_a_height_that_a_rim_bars_to_one_side_only_is_not_called_sure",
    ),
    Spoiling(
        "what a motion reaches forgotten where the field is estimated anew",
        "diagnose/concluding.py",
        ".and_more(pose.reaches)",
        "",
        "tests/unit/test_reaches.py::test_it_is_added_to_the_covariance_of_the_motion_alone",
    ),
    Spoiling(
        "a cube that forgets triangles",
        "core/cells.py",
        "nearest + 2.0 * diagonal",
        "nearest + 0.2 * diagonal",
        "tests/unit/test_closest_points.py::test_near_a_drawn_body_the_distance_is_that_of_another_library",
    ),
    Spoiling(
        "frames swapped on the way to the connection",
        "fit/descend.py",
        "(points - scan_from_connection[:3, 3]) @ scan_from_connection[:3, :3])",
        "(points - scan_from_connection[:3, 3]) @ scan_from_connection[:3, :3].T)",
        "tests/recovery/test_causes.py::test_a_bent_body_is_not_used",
    ),
)

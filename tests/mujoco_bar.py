"""Bars on hooks and in a pivot, built for the MuJoCo rigid-body engine.

An independent oracle: masses, places and shapes go in, contact forces come out. Nothing here uses
the package under test.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, radians, sin
from typing import Any

import numpy as np

from oracle import oracle

BAR_RADIUS = 0.014
ROD_RADIUS = 0.020


@dataclass(frozen=True)
class Weight:
    """A mass in kg at a place in m along the bar; places right of the middle are positive."""

    mass: float
    place: float


def stacked(
    plates: Sequence[tuple[float, float]], *, sign: int = 1, face: float = 0.685
) -> list[Weight]:
    """Plates (mass, thickness) pushed together outwards from the collar's face."""
    weights = []
    for mass, thickness in plates:
        weights.append(Weight(mass, sign * (face + thickness / 2)))
        face += thickness
    return weights


def _plate_geoms(weights: Sequence[Weight], origin: float = 0.0) -> str:
    """Plates without contact; flat boxes, so that each carries some inertia of its own."""
    return "".join(
        f'<geom type="box" size="0.01 0.2 0.2" pos="{origin + w.place:.12g} 0 0" '
        f'mass="{w.mass:.12g}" contype="0" conaffinity="0"/>'
        for w in weights
    )


def _contact_forces(model: Any, data: Any) -> dict[str, float]:
    """Normal force in N on each named rod that touches the bar."""
    forces: dict[str, float] = {}
    wrench = np.zeros(6)
    for index in range(data.ncon):
        oracle("mujoco").mj_contactForce(model, data, index, wrench)
        pair = (data.contact[index].geom1, data.contact[index].geom2)
        rod = next(name for name in (model.geom(g).name for g in pair) if name != "bar")
        forces[rod] = forces.get(rod, 0.0) + float(wrench[0])
    return forces


def grip_force(
    bar_mass: float,
    bar_length: float,
    plates: Sequence[Weight],
    grip: float,
    angle_deg: float,
    pivot_offset: float = 0.0,
) -> float:
    """Force in kgf square to a pivoted bar that rests on a frictionless rod at the grip.

    Places of the plates are distances from the bar end at the pivot.
    """
    angle = radians(angle_deg)
    along = grip + pivot_offset
    below = BAR_RADIUS + ROD_RADIUS
    rod = (along * cos(angle) + below * sin(angle), along * sin(angle) - below * cos(angle))
    mujoco = oracle("mujoco")
    model = mujoco.MjModel.from_xml_string(f"""
    <mujoco>
      <option timestep="0.001" gravity="0 0 -9.81"/>
      <default><geom condim="1" solref="0.004 1" solimp="0.99 0.999 0.0001"/></default>
      <worldbody>
        <geom name="rod" type="capsule" size="{ROD_RADIUS}"
          fromto="{rod[0]:.12g} -0.2 {rod[1]:.12g} {rod[0]:.12g} 0.2 {rod[1]:.12g}"/>
        <body euler="0 {-angle_deg:.12g} 0">
          <joint type="hinge" axis="0 -1 0" damping="200"/>
          <geom name="bar" type="capsule" size="{BAR_RADIUS}" mass="{bar_mass}"
            fromto="{pivot_offset} 0 0 {pivot_offset + bar_length} 0 0"/>
          {_plate_geoms(plates, pivot_offset)}
        </body>
      </worldbody>
    </mujoco>""")
    data = mujoco.MjData(model)
    mujoco.mj_step(model, data, 300)
    assert abs(data.qvel[0]) < 1e-6, "the bar has not come to rest"
    return _contact_forces(model, data)["rod"] / 9.81


def tips(
    bar_mass: float,
    bar_length: float,
    weights: Sequence[Weight],
    spacing: float,
    shift: float = 0.0,
    pulls: Sequence[Weight] = (),
) -> bool:
    """Whether a bar lying on two hooks leaves one of them within a second.

    Args:
        bar_mass: kg.
        bar_length: m.
        weights: plates, by place from the middle of the bar.
        spacing: m between the hooks' middles.
        shift: m the bar lies right of the middle.
        pulls: steady downward forces in kgf, by place from the middle of the bar.
    """
    height = BAR_RADIUS + ROD_RADIUS
    mujoco = oracle("mujoco")
    model = mujoco.MjModel.from_xml_string(f"""
    <mujoco>
      <option timestep="0.002" gravity="0 0 -9.81"/>
      <default><geom friction="0.4 0 0" solref="0.006 1"/></default>
      <worldbody>
        <geom name="left" type="capsule" size="{ROD_RADIUS}"
          fromto="{-spacing / 2} -0.1 0 {-spacing / 2} 0.1 0"/>
        <geom name="right" type="capsule" size="{ROD_RADIUS}"
          fromto="{spacing / 2} -0.1 0 {spacing / 2} 0.1 0"/>
        <body pos="{shift} 0 {height}">
          <joint type="slide" axis="1 0 0"/>
          <joint type="slide" axis="0 0 1"/>
          <joint type="hinge" axis="0 1 0"/>
          <geom name="bar" type="capsule" size="{BAR_RADIUS}" mass="{bar_mass}"
            fromto="{-bar_length / 2} 0 0 {bar_length / 2} 0 0"/>
          {_plate_geoms(weights)}
        </body>
      </worldbody>
    </mujoco>""")
    data = mujoco.MjData(model)
    for pull in pulls:
        # Generalised force on (x, z, turn about y); the tilt stays too small to move the lever.
        data.qfrc_applied += np.array([0.0, -9.81 * pull.mass, 9.81 * pull.mass * pull.place])
    mujoco.mj_step(model, data, 500)
    return len(_contact_forces(model, data)) < 2

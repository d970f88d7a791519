// Keel, what lies behind and fastenings beside the planks: all bodies are one, and all fastenings one cloud of points.

import { Mesh, Points } from "three";
import { partOf, shown, uses } from "/rooms/bottom/parts.js";
import { shop } from "/rooms/frame/shop.js";
import { bytes } from "/rooms/frame/wire.js";
import { geometry, material, rgb, texture } from "./shade.js";
import { parts as unpacked } from "./unpack.js";

/** How large a fastening is drawn, mm, and the least and most that come of it, pixels. */
const POINT_MM = 12,
  LEAST = 1.4,
  MOST = 7;

/** By how much of the picture's depth a point lies before the face that it is on. */
const BEFORE = 1e-3;

export function besides(scene, draw) {
  const solid = new Mesh(geometry(empty(), new Uint32Array(0)), material(0));
  const points = new Points(geometry(empty()), material(2));
  points.material.uniforms.nearer.value = BEFORE;
  solid.frustumCulled = points.frustumCulled = false;
  scene.add(solid, points);
  let read = null,
    asked = 0;

  async function paint() {
    const turn = shop.facts?.turn;
    if (shown.size > 0 && turn && read?.turn !== turn && asked !== turn) {
      asked = turn;
      const packed = await bytes(`parts/${turn}`).catch(() => null);
      asked = 0;
      if (packed !== null) {
        read = { turn, ...unpacked(packed) };
        shop.lacking = read.told.lacking;
        for (const [of, made] of [[solid, geometry(read.faces, read.triangles)], [points, geometry(read.points)]]) {
          of.geometry.dispose();
          of.geometry = made;
          of.position.copy(read.least);
          of.scale.copy(read.size);
          of.updateMatrixWorld();
        }
      }
    }
    mark();
  }

  function mark() {
    solid.visible = points.visible = read !== null && shown.size > 0;
    if (!solid.visible) {
      draw();
      return;
    }
    const stale = read.turn !== shop.shown.turn;
    const tint = (colour) => (stale ? [150, 146, 138] : rgb(colour));
    const bodies = solid.material.uniforms.colours;
    bodies.value = texture(
      read.told.bodies.map(([, kind]) => [...tint(partOf(kind).colour), shown.has(partOf(kind).part) ? 255 : 0]),
      bodies.value,
    );
    // A fastening is seen with its skin: its texel is that of plank and use.
    const { order } = shop.facts;
    const layerOf = new Map(shop.facts.runs.flatMap((r) => r.planks.map((p) => [p, r.layer])));
    const colours = points.material.uniforms.colours;
    const seen = shown.has("fastenings") && !stale;
    colours.value = texture(
      uses.flatMap(({ colour }) => order.map((id) => [...rgb(colour), seen && !shop.hidden.has(layerOf.get(id)) ? 255 : 0])),
      colours.value,
    );
    if (!read.isSpread) {
      read.isSpread = true;
      const of = points.geometry.getAttribute("body"),
        use = read.points.normals;
      for (let i = 0; i < of.count; i++) {
        of.setX(i, of.getX(i) + order.length * use[3 * i]);
      }
      of.needsUpdate = true;
    }
    draw();
  }

  /** @param pixels a millimetre takes so many */
  const scale = (pixels) => {
    points.material.uniforms.size.value = Math.max(LEAST, Math.min(MOST, POINT_MM * pixels));
  };

  return { paint, mark, scale, materials: [solid.material, points.material], count: () => (points.visible ? points.geometry.getAttribute("position").count : 0) };
}

const empty = () => ({ positions: new Uint16Array(0), bodies: new Float32Array(0), normals: new Int8Array(0) });

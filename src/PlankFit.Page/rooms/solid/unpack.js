// Reads what PackedSolids and PackedParts write.

import { Vector3 } from "three";

/** Least corner and size of the box that a head has at so many bytes. */
function box(view, at) {
  const of = [0, 1, 2, 3, 4, 5].map((i) => view.getFloat32(at + 4 * i, true));
  return {
    least: new Vector3(of[0], of[1], of[2]),
    size: new Vector3(of[3] - of[0], of[4] - of[1], of[5] - of[2]),
  };
}

function vertices(buffer, from, count) {
  const words = new Uint16Array(buffer, from, 6 * count);
  const small = new Int8Array(buffer, from, 12 * count);
  const made = { positions: new Uint16Array(3 * count), bodies: new Float32Array(count), normals: new Int8Array(3 * count) };
  for (let v = 0; v < count; v++) {
    for (let i = 0; i < 3; i++) {
      made.positions[3 * v + i] = words[6 * v + i];
      made.normals[3 * v + i] = small[12 * v + 8 + i];
    }
    made.bodies[v] = words[6 * v + 3];
  }
  return made;
}

function head(buffer, letters) {
  const view = new DataView(buffer);
  if (view.getUint32(0, false) !== letters) {
    throw new Error("these are no planks");
  }
  return { view, counts: [4, 8, 12, 16].map((at) => view.getUint32(at, true)) };
}

export function planks(buffer) {
  const { view, counts } = head(buffer, 0x50465331);
  const [count, points, triangles, lines] = counts;
  const from = 44 + 8 * count,
    places = from + 12 * points;
  return {
    ...box(view, 20),
    ...vertices(buffer, from, points),
    triangles: new Uint32Array(buffer, places, triangles),
    lines: new Uint32Array(buffer, places + 4 * triangles, lines),
  };
}

export function parts(buffer) {
  const { view, counts } = head(buffer, 0x50465031);
  const [words, points, triangles, holes] = counts;
  const from = 44 + words,
    places = from + 12 * points;
  return {
    ...box(view, 20),
    told: JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 44, words))),
    faces: vertices(buffer, from, points),
    triangles: new Uint32Array(buffer, places, triangles),
    points: vertices(buffer, places + 4 * triangles, holes),
  };
}

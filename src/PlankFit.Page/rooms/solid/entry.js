// The picture drawn by the browser itself: all planks as one body, lit at their vertices by a lamp at the eye, in one colour a plank. Bundled with what it uses of three
// at the build; what it shares with the drawn picture it takes from the page.

import { LineSegments, Mesh, OrthographicCamera, Raycaster, Scene, Vector2, Vector3, WebGLRenderer } from "three";
import { colouring } from "/rooms/bottom/colours.js";
import { shop } from "/rooms/frame/shop.js";
import { bytes } from "/rooms/frame/wire.js";
import { besides } from "./parts.js";
import { geometry, material, rgb, texture } from "./shade.js";
import { planks as unpacked } from "./unpack.js";

export const why = "This browser cannot draw in three dimensions: the picture is drawn by the shop's computer.";

export function canDraw() {
  return document.createElement("canvas").getContext("webgl2") !== null;
}

/** Bodies that did not come are asked for again after so long, ms. */
const AGAIN = 2000;

/** While it is turned, and of planks of which no more is known yet, every second pixel will do where a browser draws in software: it keeps up with the hand. */
const MOVING = 0.6;

/** A picture of all pixels that takes longer till the next, ms, is drawn in software. */
const SLOW_MS = 25;
const FEW = 4;

/** Seams of the skin below are seen through so much wood, mm. */
const THROUGH_MM = 40;
const GHOST = rgb("#3c4f8f");
const NOTHING = { positions: new Uint16Array(0), bodies: new Float32Array(0), normals: new Int8Array(0) };

export function drawer(sheet, sight, onDrawn) {
  const renderer = new WebGLRenderer({ antialias: false, alpha: true });
  renderer.domElement.setAttribute("aria-hidden", "true");
  sheet.append(renderer.domElement);
  const scene = new Scene();
  const camera = new OrthographicCamera();
  const solid = new Mesh(geometry(NOTHING, new Uint32Array(0)), material(0));
  const lines = new LineSegments(geometry(NOTHING, new Uint32Array(0)), material(0.75));
  const ghost = new LineSegments(geometry(NOTHING, new Uint32Array(0)), material(2));
  solid.frustumCulled = lines.frustumCulled = ghost.frustumCulled = false;
  scene.add(solid, lines, ghost);
  const parts = besides(scene, () => draw(1));
  const materials = [solid.material, lines.material, ghost.material, ...parts.materials];
  const eye = new Vector3();
  for (const of of materials) {
    of.uniforms.eye.value = eye;
  }
  let body = null,
    asked = false,
    rest = 0,
    frames = 0;
  // What the last few pictures of all pixels took; the least of them, since anything may come between.
  const took = [];
  new ResizeObserver(() => draw(1)).observe(sheet);

  // Asked for as soon as they are there, together with which planks there are.
  let ahead = null;
  const fetched = (turn) => bytes(`planks/${turn}`).catch(() => null);

  function coming() {
    ahead = { turn: shop.coming, packed: fetched(shop.coming) };
  }

  async function paint() {
    const { turn, order } = shop.shown;
    if (body?.turn !== turn) {
      const packed = (ahead?.turn === turn ? await ahead.packed : null) ?? (await fetched(turn));
      if (packed === null && shop.shown.turn === turn && sheet.isConnected) {
        // Did not come, and is shown still: no news need come that would have it fetched.
        setTimeout(() => shop.shown.turn === turn && body?.turn !== turn && paint(), AGAIN);
      }
      if (packed === null || shop.shown.turn !== turn) {
        return;
      }
      body = { turn, order, ...unpacked(packed) };
      // Faces and edges are of the same vertices, which are given to the graphics card once.
      const faces = geometry(body, body.triangles),
        edges = geometry(faces.attributes, body.lines);
      for (const [of, shape] of [[solid, faces], [lines, edges], [ghost, edges]]) {
        of.geometry.dispose();
        of.geometry = shape;
        of.position.copy(body.least);
        of.scale.copy(body.size);
        of.updateMatrixWorld();
      }
    }
    mark();
    if (shop.shown === shop.skins) {
      moves();
    }
    parts.paint();
  }

  /** A texel a plank: its colour, and whether it is to be seen. */
  function mark() {
    if (body === null) {
      return;
    }
    const by = colouring();
    const layerOf = new Map(shop.shown.runs.flatMap((r) => r.planks.map((p) => [p, r.layer])));
    const of = solid.material.uniforms.colours;
    of.value = texture(
      body.order.map((id) => [
        ...rgb(id === shop.picked ? "#3f7be0" : (by.of(id) ?? "#cccccc")),
        shop.hidden.has(layerOf.get(id)) ? 0 : 255,
      ]),
      of.value,
    );
    lines.material.uniforms.colours.value = of.value;
    const under = shop.ghost ? below() : new Set();
    ghost.visible = under.size > 0;
    const shades = ghost.material.uniforms.colours;
    shades.value = texture(body.order.map((id) => [...GHOST, under.has(layerOf.get(id)) ? 255 : 0]), shades.value);
    parts.mark();
    draw(1);
  }

  function moves() {
    draw(took.length > 0 && Math.min(...took) > SLOW_MS ? MOVING : 1);
    clearTimeout(rest);
    rest = setTimeout(() => draw(1), 200);
  }

  let ratio = 1;

  function draw(part) {
    ratio = part;
    if (!asked) {
      asked = true;
      requestAnimationFrame(frame);
    }
  }

  function frame() {
    asked = false;
    const [width, height] = [sheet.clientWidth, sheet.clientHeight];
    if (body === null || width === 0) {
      return;
    }
    const pixels = part(ratio);
    const now = new Vector2();
    renderer.getSize(now);
    if (renderer.getPixelRatio() !== pixels || now.x !== width || now.y !== height) {
      renderer.setPixelRatio(pixels);
      renderer.setSize(width, height, false);
    }
    look(width, height);
    const from = performance.now();
    renderer.render(scene, camera);
    if (ratio === 1) {
      requestAnimationFrame(() => {
        took.push(performance.now() - from);
        took.splice(0, took.length - FEW);
      });
    }
    sheet.dataset.frames = ++frames;
    sheet.dataset.triangles = renderer.info.render.triangles;
    sheet.dataset.turn = body.turn;
    sheet.dataset.points = parts.count();
    onDrawn?.();
  }

  const part = (of) => (of === 1 ? Math.min(2, window.devicePixelRatio) : of);

  /** The same place of the eye as that of the drawn picture: x grows aft, y to starboard, z up. */
  function look(width, height) {
    const t = (sight.turned * Math.PI) / 180,
      e = (sight.tilted * Math.PI) / 180,
      k = sight.upside ? -1 : 1;
    const towards = new Vector3(-Math.sin(t) * Math.cos(e), Math.cos(t) * Math.cos(e), k * Math.sin(e));
    const across = new Vector3(-Math.cos(t), -Math.sin(t), 0).multiplyScalar(k);
    const up = new Vector3().crossVectors(towards, across);
    const half = body.size.clone().multiplyScalar(0.5);
    const centre = body.least.clone().add(half);
    const reach = (axis) => Math.abs(axis.x) * half.x + Math.abs(axis.y) * half.y + Math.abs(axis.z) * half.z;
    const [wide, high, deep] = [reach(across), reach(up), reach(towards)];
    const mm = (1.05 * Math.max((2 * wide) / width, (2 * high) / height)) / sight.zoom;
    camera.left = (-width * mm) / 2;
    camera.right = (width * mm) / 2;
    camera.top = (height * mm) / 2;
    camera.bottom = (-height * mm) / 2;
    camera.near = 0;
    camera.far = 2 * deep + 2;
    camera.position.copy(centre).addScaledVector(towards, deep + 1);
    camera.up.copy(up);
    camera.lookAt(centre);
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
    eye.copy(towards);
    parts.scale(part(ratio) / mm);
    ghost.material.uniforms.nearer.value = THROUGH_MM / (deep + 1);
  }

  function at(event) {
    if (body === null) {
      return null;
    }
    const box = sheet.getBoundingClientRect();
    const ray = new Raycaster();
    ray.setFromCamera(
      new Vector2(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2),
      camera,
    );
    const planks = solid.geometry.getAttribute("body");
    const isSeen = (hit) => solid.material.uniforms.colours.value.image.data[4 * planks.getX(hit.face.a) + 3] > 0;
    const hit = ray.intersectObject(solid).find(isSeen);
    return hit ? body.order[planks.getX(hit.face.a)] : null;
  }

  /** Where a place of the hull is on the sheet, pixels from its upper left corner; null before anything is drawn. */
  function project([x, y, z]) {
    if (body === null) {
      return null;
    }
    const seen = new Vector3(x, y, z).project(camera);
    return [((seen.x + 1) / 2) * sheet.clientWidth, ((1 - seen.y) / 2) * sheet.clientHeight];
  }

  /** The least and the greatest corner of all planks, mm. */
  const box = () => (body === null ? null : { least: body.least.toArray(), most: body.least.clone().add(body.size).toArray() });

  return { paint, coming, turn: moves, mark, at, project, box, besides: parts.paint };
}

/** Skins that lie under the outermost one that is shown, panel by panel. */
function below() {
  const under = new Set();
  const codes = [...new Set(shop.shown.runs.map((r) => r.layer))];
  for (const of of Map.groupBy(codes, (code) => code.replace(/\d+$/, "")).values()) {
    const outermost = of.findLastIndex((code) => !shop.hidden.has(code));
    if (outermost > 0) {
      under.add(of[outermost - 1]);
    }
  }
  return under;
}

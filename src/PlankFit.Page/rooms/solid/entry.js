// The picture drawn by the browser itself: all planks as one body, lit at their vertices by a lamp at the eye, in one colour a plank. Bundled with what it uses of three
// at the build; what it shares with the drawn picture it takes from the page.

import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DataTexture,
  LineSegments,
  Mesh,
  NearestFilter,
  OrthographicCamera,
  Raycaster,
  Scene,
  ShaderMaterial,
  Vector2,
  Vector3,
  WebGLRenderer,
} from "three";
import { colouring } from "/rooms/bottom/colours.js";
import { shop } from "/rooms/frame/shop.js";
import { bytes } from "/rooms/frame/wire.js";

export const why = "This browser cannot draw in three dimensions: the picture is drawn by the shop's computer.";

export function canDraw() {
  return document.createElement("canvas").getContext("webgl2") !== null;
}

const VERTEX = `
  attribute float plank;
  uniform sampler2D colours;
  uniform vec3 eye;
  uniform float shade;
  varying vec3 colour;
  void main() {
    vec4 own = texelFetch(colours, ivec2(int(plank + 0.5), 0), 0);
    float light = 0.42 + 0.58 * abs(dot(normalize(normal), eye));
    colour = mix(own.rgb * light, vec3(0.12), shade);
    gl_Position = own.a < 0.5 ? vec4(2.0, 2.0, 2.0, 1.0) : projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }`;
const FRAGMENT = `
  varying vec3 colour;
  void main() {
    gl_FragColor = vec4(colour, 1.0);
  }`;

/** While it is turned every second pixel will do: what draws in software keeps up. */
const TURNING = 0.6;

export function drawer(sheet, sight) {
  const renderer = new WebGLRenderer({ antialias: false, alpha: true });
  renderer.domElement.setAttribute("aria-hidden", "true");
  sheet.append(renderer.domElement);
  const scene = new Scene();
  const camera = new OrthographicCamera();
  const uniforms = { colours: { value: null }, eye: { value: new Vector3() } };
  const material = (shade) =>
    new ShaderMaterial({
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      uniforms: { ...uniforms, shade: { value: shade } },
      polygonOffset: shade === 0,
      polygonOffsetFactor: 1,
      polygonOffsetUnits: 1,
    });
  const solid = new Mesh(new BufferGeometry(), material(0));
  const lines = new LineSegments(new BufferGeometry(), material(0.75));
  solid.frustumCulled = lines.frustumCulled = false;
  scene.add(solid, lines);
  let body = null,
    asked = false,
    rest = 0,
    frames = 0;
  new ResizeObserver(() => draw(1)).observe(sheet);

  async function paint() {
    const { turn, order } = shop.shown;
    if (body?.turn !== turn) {
      const packed = await bytes(`planks/${turn}`).catch(() => null);
      if (packed === null || shop.shown.turn !== turn) {
        return;
      }
      body = { turn, order, ...unpacked(packed) };
      for (const [of, index] of [[solid, body.triangles], [lines, body.lines]]) {
        of.geometry.dispose();
        of.geometry = geometry(body, index);
        of.position.copy(body.least);
        of.scale.copy(body.size);
        of.updateMatrixWorld();
      }
    }
    mark();
  }

  /** A texel a plank: its colour, and whether it is to be seen. */
  function mark() {
    if (body === null) {
      return;
    }
    const by = colouring();
    const layerOf = new Map(shop.shown.runs.flatMap((r) => r.planks.map((p) => [p, r.layer])));
    const texels = new Uint8Array(4 * Math.max(1, body.order.length));
    const colour = new Color();
    body.order.forEach((id, i) => {
      colour.set(id === shop.picked ? "#3f7be0" : (by.of(id) ?? "#cccccc"));
      // Colours are meant as they are written, with no working space between.
      const hex = colour.getHex();
      texels.set([hex >> 16, (hex >> 8) & 255, hex & 255, shop.hidden.has(layerOf.get(id)) ? 0 : 255], 4 * i);
    });
    uniforms.colours.value?.dispose();
    const texture = new DataTexture(texels, texels.length / 4, 1);
    texture.magFilter = texture.minFilter = NearestFilter;
    texture.needsUpdate = true;
    uniforms.colours.value = texture;
    for (const of of [solid, lines]) {
      of.material.uniforms.colours.value = texture;
    }
    draw(1);
  }

  function turn() {
    draw(TURNING);
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
    renderer.render(scene, camera);
    sheet.dataset.frames = ++frames;
    sheet.dataset.triangles = renderer.info.render.triangles;
    sheet.dataset.turn = body.turn;
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
    uniforms.eye.value.copy(towards);
    for (const of of [solid, lines]) {
      of.material.uniforms.eye.value = uniforms.eye.value;
    }
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
    const planks = solid.geometry.getAttribute("plank");
    const isSeen = (hit) => uniforms.colours.value.image.data[4 * planks.getX(hit.face.a) + 3] > 0;
    const hit = ray.intersectObject(solid).find(isSeen);
    return hit ? body.order[planks.getX(hit.face.a)] : null;
  }

  return { paint, turn, mark, at };
}

function geometry(body, index) {
  const made = new BufferGeometry();
  made.setAttribute("position", new BufferAttribute(body.positions, 3, true));
  made.setAttribute("plank", new BufferAttribute(body.planks, 1));
  made.setAttribute("normal", new BufferAttribute(body.normals, 3, true));
  made.setIndex(new BufferAttribute(index, 1));
  return made;
}

/** As PackedSolids writes it. */
function unpacked(buffer) {
  const view = new DataView(buffer);
  if (view.getUint32(0, false) !== 0x50465331) {
    throw new Error("these are no planks");
  }
  const [planks, vertices, triangles, lines] = [4, 8, 12, 16].map((at) => view.getUint32(at, true));
  const box = [0, 1, 2, 3, 4, 5].map((i) => view.getFloat32(20 + 4 * i, true));
  const from = 44 + 8 * planks;
  const words = new Uint16Array(buffer, from, 6 * vertices);
  const small = new Int8Array(buffer, from, 12 * vertices);
  const body = {
    least: new Vector3(box[0], box[1], box[2]),
    size: new Vector3(box[3] - box[0], box[4] - box[1], box[5] - box[2]),
    positions: new Uint16Array(3 * vertices),
    planks: new Float32Array(vertices),
    normals: new Int8Array(3 * vertices),
    triangles: new Uint32Array(buffer, from + 12 * vertices, triangles),
    lines: new Uint32Array(buffer, from + 12 * vertices + 4 * triangles, lines),
  };
  for (let v = 0; v < vertices; v++) {
    for (let i = 0; i < 3; i++) {
      body.positions[3 * v + i] = words[6 * v + i];
      body.normals[3 * v + i] = small[12 * v + 8 + i];
    }
    body.planks[v] = words[6 * v + 3];
  }
  return body;
}

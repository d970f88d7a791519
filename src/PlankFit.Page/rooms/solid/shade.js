// How bodies are lit: at their vertices, by a lamp at the eye, in one colour a body. A texel of `colours` is a body's colour, and how it is seen: nought not at all.

import { BufferAttribute, BufferGeometry, DataTexture, NearestFilter, ShaderMaterial } from "three";

const VERTEX = `
  attribute float body;
  uniform sampler2D colours;
  uniform vec3 eye;
  uniform float shade;
  uniform float nearer;
  uniform float size;
  varying vec3 colour;
  void main() {
    vec4 own = texelFetch(colours, ivec2(int(body + 0.5), 0), 0);
    float light = shade > 1.5 ? 1.0 : 0.42 + 0.58 * abs(dot(normalize(normal), eye));
    colour = mix(own.rgb * light, vec3(0.12), shade > 1.5 ? 0.0 : shade);
    gl_Position = own.a < 0.5 ? vec4(2.0, 2.0, 2.0, 1.0) : projectionMatrix * modelViewMatrix * vec4(position, 1.0);
    gl_Position.z -= nearer;
    gl_PointSize = size;
  }`;
const FRAGMENT = `
  varying vec3 colour;
  void main() {
    gl_FragColor = vec4(colour, 1.0);
  }`;

/** @param shade 0 for faces, up to 1 for their edges, 2 for what has its own colour whatever the light */
export function material(shade) {
  return new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    uniforms: {
      colours: { value: null },
      eye: { value: null },
      shade: { value: shade },
      // Parts of the depth of the picture by which it is drawn before where it is.
      nearer: { value: 0 },
      size: { value: 1 },
    },
    polygonOffset: shade === 0,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  });
}

/** @param of of each body [red, green, blue, whether it is seen], to 255 */
export function texture(of, old) {
  old?.dispose();
  const made = new DataTexture(new Uint8Array(of.length === 0 ? 4 : of.flat()), Math.max(1, of.length), 1);
  made.magFilter = made.minFilter = NearestFilter;
  made.needsUpdate = true;
  return made;
}

export function rgb(colour) {
  return [1, 3, 5].map((i) => parseInt(colour.slice(i, i + 2), 16));
}

/** @param vertices as they are unpacked, or those that another shape has */
export function geometry(vertices, index) {
  const made = new BufferGeometry();
  made.setAttribute("position", vertices.position ?? new BufferAttribute(vertices.positions, 3, true));
  made.setAttribute("body", vertices.body ?? new BufferAttribute(vertices.bodies, 1));
  made.setAttribute("normal", vertices.normal ?? new BufferAttribute(vertices.normals, 3, true));
  if (index) {
    made.setIndex(new BufferAttribute(index, 1));
  }
  return made;
}

// Makes the figures of a page work (output/model_figure.h): a model is turned, zoomed, cut, taken apart and put in. It
// is drawn when something changed, never else. Lengths are in mm, z is up.
(() => {
  "use strict";
  const DEGREE = Math.PI / 180;
  const FIELD = 30 * DEGREE; // that a view's height spans
  const WIDE = 1.5; // width by height for which views are given
  const PLAY_SECONDS = 5;
  const STILLS = 5; // in place of a motion, for those who asked their system for less of it

  // --- reading the file ---

  // Arrays of the file that output/gltf.cpp writes; no other need be read.
  const readGlb = (bytes) => {
    const view = new DataView(bytes);
    const length = view.getUint32(12, true);
    const file = JSON.parse(new TextDecoder().decode(new Uint8Array(bytes, 20, length)));
    file.array = (index) => {
      const accessor = file.accessors[index];
      const kind = { 5123: Uint16Array, 5125: Uint32Array, 5126: Float32Array }[accessor.componentType];
      const width = { SCALAR: 1, VEC3: 3, VEC4: 4 }[accessor.type];
      return new kind(bytes, 28 + length + file.bufferViews[accessor.bufferView].byteOffset, accessor.count * width);
    };
    return file;
  };

  const bytesOf = (base64) => Uint8Array.from(atob(base64.trim()), (letter) => letter.charCodeAt(0)).buffer;

  // --- what things look like ---

  // As pictures are lit: soft light from all above, a key light from the upper left. A pattern lies over it in pixels.
  const VERTEX = `
    #include <clipping_planes_pars_vertex>
    varying float front;
    varying float back;
    uniform bool lit;
    float light(vec3 n) {
      float sky = 0.5 + 0.5 * dot(n, vec3(0.0, 0.914, 0.406));
      return 0.62 + 0.20 * sky + 0.22 * max(0.0, dot(n, vec3(-0.447, 0.496, 0.745)));
    }
    void main() {
      vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
      gl_Position = projectionMatrix * mvPosition;
      vec3 n = normalMatrix * normal;
      front = lit ? light(n) : 1.0;
      back = lit ? light(-n) : 1.0;
      #include <clipping_planes_vertex>
    }`;
  const FRAGMENT = `
    #include <clipping_planes_pars_fragment>
    varying float front;
    varying float back;
    uniform vec3 colour;
    uniform float cover;
    uniform vec3 ink;
    uniform float pitch;  // pixels; 0: no pattern
    uniform vec2 along;   // across the lines; a grid has both ways
    uniform bool grid;
    float line(float at) {
      float off = abs(mod(at, pitch) - 0.5 * pitch);
      return 1.0 - smoothstep(0.04 * pitch, 0.04 * pitch + 0.7, off);
    }
    void main() {
      #include <clipping_planes_fragment>
      vec4 at = vec4(colour * min(gl_FrontFacing ? front : back, 1.0), cover);
      if (pitch > 0.0) {
        float covered = line(dot(gl_FragCoord.xy, along));
        if (grid) covered = max(covered, line(dot(gl_FragCoord.xy, vec2(-along.y, along.x))));
        at = mix(at, vec4(ink, 1.0), covered);
      }
      gl_FragColor = at;
    }`;
  const painted = (settings) => {
    const material = new THREE.ShaderMaterial({
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      clipping: true,
      uniforms: {
        colour: { value: new THREE.Color() },
        ink: { value: new THREE.Color() },
        cover: { value: 1 },
        lit: { value: true },
        grid: { value: false },
        pitch: { value: 0 },
        along: { value: new THREE.Vector2(Math.SQRT1_2, Math.SQRT1_2) },
      },
    });
    return Object.assign(material, settings);
  };

  // Lines lie on their faces, not in them.
  const UNDER = { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 };

  // What a cut shows of a solid: where more of its back faces than of its front faces are seen past the plane, the eye
  // looks into it, and there the plane is filled.
  const counted = (side, operation) =>
    new THREE.MeshBasicMaterial({
      side,
      colorWrite: false,
      depthWrite: false,
      depthTest: false,
      stencilWrite: true,
      stencilFail: operation,
      stencilZFail: operation,
      stencilZPass: operation,
    });
  const BACKS = counted(THREE.BackSide, THREE.IncrementWrapStencilOp);
  const FRONTS = counted(THREE.FrontSide, THREE.DecrementWrapStencilOp);
  const WHITE = new THREE.Color("#FFFFFF");
  const SQUARE = new THREE.PlaneBufferGeometry(2, 2);

  // --- one node of the file ---

  class Part {
    constructor(file, index, order) {
      const node = file.nodes[index];
      Object.assign(this, node.extras);
      this.group = new THREE.Group();
      this.group.position.fromArray(node.translation);
      this.home = this.group.position.clone();
      this.box = new THREE.Box3(); // about its own origin
      this.motions = {};
      for (const primitive of file.meshes[node.mesh].primitives) this.add(file, primitive, order);
    }

    add(file, primitive, order) {
      const geometry = new THREE.BufferGeometry();
      const { POSITION, NORMAL } = primitive.attributes;
      geometry.setAttribute("position", new THREE.BufferAttribute(file.array(POSITION), 3));
      geometry.setIndex(new THREE.BufferAttribute(file.array(primitive.indices), 1));
      const { min, max } = file.accessors[POSITION];
      this.box.union(new THREE.Box3(new THREE.Vector3(...min), new THREE.Vector3(...max)));
      const given = file.materials[primitive.material];
      if (primitive.mode === 1) {
        this.edges = new THREE.LineSegments(geometry, new THREE.LineBasicMaterial());
        this.edges.paint = given.extras;
        // What a cut takes away is hinted at.
        const faint = new THREE.LineBasicMaterial({ transparent: true, opacity: 0.18 });
        this.hints = new THREE.LineSegments(geometry, faint);
        this.hints.paint = given.extras;
        this.group.add(this.edges, this.hints);
      } else {
        geometry.setAttribute("normal", new THREE.BufferAttribute(file.array(NORMAL), 3));
        this.cover = given.pbrMetallicRoughness.baseColorFactor[3];
        const side = given.doubleSided ? THREE.DoubleSide : THREE.FrontSide;
        this.surface = new THREE.Mesh(geometry, painted({ ...UNDER, side }));
        this.surface.paint = given.extras;
        this.group.add(this.surface);
        if (this.closed && !this.clash) this.addCap(geometry, order);
      }
      if (this.clash) this.group.children.forEach((each) => this.lieOver(each));
    }

    // The room that two parts claim is shown over all else.
    lieOver(object) {
      object.material.depthTest = false;
      object.material.transparent = true;
      object.renderOrder = object === this.surface ? 1e6 : 1e6 + 1;
      if (object === this.surface) {
        object.material.uniforms.lit.value = false;
        object.material.uniforms.grid.value = true;
      }
    }

    addCap(geometry, order) {
      this.counts = [BACKS, FRONTS].map((material) => new THREE.Mesh(geometry, material.clone()));
      for (const count of this.counts) {
        count.renderOrder = 2 * order;
        this.group.add(count);
      }
      this.cap = new THREE.Mesh(
        SQUARE,
        painted({ ...UNDER, stencilWrite: true, stencilFunc: THREE.NotEqualStencilFunc, side: THREE.DoubleSide })
      );
      this.cap.paint = this.surface.paint;
      this.cap.material.uniforms.lit.value = false;
      this.cap.material.uniforms.along.value.set(this.drive ? -Math.SQRT1_2 : Math.SQRT1_2, Math.SQRT1_2);
      this.cap.renderOrder = 2 * order + 1;
      this.cap.onAfterRender = (renderer) => renderer.clearStencil();
    }

    // Takes a channel of an animation.
    addMotion(name, path, times, values, step) {
      const Track = path === "rotation" ? THREE.QuaternionKeyframeTrack : THREE.VectorKeyframeTrack;
      const track = new Track("." + path, times, values, step ? THREE.InterpolateDiscrete : THREE.InterpolateLinear);
      (this.motions[name] = this.motions[name] || []).push([path, track.createInterpolant()]);
    }

    stand(name, moment) {
      this.group.position.copy(this.home);
      this.group.quaternion.set(0, 0, 0, 1);
      this.group.visible = true;
      for (const [path, track] of this.motions[name] || []) {
        const value = track.evaluate(moment);
        if (path === "translation") this.group.position.fromArray(value);
        if (path === "rotation") this.group.quaternion.fromArray(value);
        if (path === "scale") this.group.visible = value[0] > 0;
      }
      this.group.updateMatrixWorld();
    }

    // Ends of the lines in which a plane cuts the surface, added to `out`.
    cutLines(plane, out) {
      if (!this.surface || this.clash) return;
      const matrix = this.group.matrixWorld;
      const local = plane.clone().applyMatrix4(new THREE.Matrix4().getInverse(matrix));
      const at = this.surface.geometry.attributes.position.array;
      const index = this.surface.geometry.index.array;
      const corner = [new THREE.Vector3(), new THREE.Vector3(), new THREE.Vector3()];
      const above = [0, 0, 0];
      for (let i = 0; i < index.length; i += 3) {
        for (let k = 0; k < 3; ++k) above[k] = local.distanceToPoint(corner[k].fromArray(at, 3 * index[i + k]));
        for (let k = 0; k < 3; ++k) {
          const next = (k + 1) % 3;
          if (above[k] >= 0 === above[next] >= 0) continue;
          const end = corner[k].clone().lerp(corner[next], above[k] / (above[k] - above[next]));
          end.applyMatrix4(matrix).toArray(out, out.length);
        }
      }
    }
  }

  // --- one figure ---

  class Figure {
    constructor(figure, file, context) {
      this.figure = figure;
      this.canvas = figure.querySelector("canvas");
      const { nodes, extras } = file.scenes[file.scene];
      this.look = extras;
      this.parts = file.nodes[nodes[0]].children.map((index, order) => new Part(file, index, order + 1));
      for (const { name, channels, samplers } of file.animations || [])
        for (const { sampler, target } of channels) {
          const { input, output, interpolation } = samplers[sampler];
          const part = this.parts[target.node - 1];
          part.addMotion(name, target.path, file.array(input), file.array(output), interpolation === "STEP");
        }
      this.motions = (file.animations || []).map((each) => each.name);

      this.renderer = new THREE.WebGLRenderer({ canvas: this.canvas, context });
      this.renderer.localClippingEnabled = true;
      this.scene = new THREE.Scene();
      this.scene.background = new THREE.Color();
      this.outline = new THREE.LineSegments(new THREE.BufferGeometry(), new THREE.LineBasicMaterial());
      this.outline.frustumCulled = false;
      this.outline.renderOrder = 1e5;
      this.scene.add(this.outline);
      for (const part of this.parts) {
        this.scene.add(part.group);
        if (part.cap) this.scene.add(part.cap);
      }
      this.camera = new THREE.PerspectiveCamera();
      this.camera.up.set(0, 0, 1);

      const drive = this.parts.filter((part) => part.drive);
      this.room = new THREE.Box3(); // along which a cut moves
      for (const part of drive.length ? drive : this.parts) this.room.union(part.box.clone().translate(part.home));
      this.addControls();
      this.reset();
      for (const each of figure.querySelectorAll("canvas, .model-controls, figcaption")) each.hidden = false;
      figure.querySelector(".model-picture").hidden = true;
      this.takeColours();
      matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => this.takeColours());
      new ResizeObserver(() => this.request()).observe(this.canvas);
      this.canvas.addEventListener("webglcontextrestored", () => this.request());
    }

    reset() {
      this.stop();
      const toward = new THREE.Vector3(...this.look.toward);
      this.across = Math.atan2(toward.y, toward.x);
      this.over = Math.asin(toward.z);
      this.zoom = 1;
      this.shift = new THREE.Vector3();
      this.apart.value = 0;
      this.putIn.value = this.putIn.max;
      this.cut.value = 0;
      this.direction.value = this.look.cut ? this.look.cut.axis : 1;
      this.request();
    }

    // --- controls ---

    control(name) {
      return this.figure.querySelector(`[data-model="${name}"]`);
    }

    addControls() {
      for (const name of ["apart", "cut", "direction", "play"]) this[name] = this.control(name);
      this.putIn = this.control("put-in");
      const press = (name, action) =>
        this.control(name).addEventListener("click", () => {
          action();
          this.request();
        });
      press("left", () => this.turn(15, 0));
      press("right", () => this.turn(-15, 0));
      press("up", () => this.turn(0, -15));
      press("down", () => this.turn(0, 15));
      press("nearer", () => this.zoomBy(1.25));
      press("farther", () => this.zoomBy(0.8));
      press("reset", () => this.reset());
      press("why", () => this.showWhy());
      this.play.addEventListener("click", () => (this.playing ? this.stop() : this.start()));
      this.cut.addEventListener("input", () => this.request());
      this.direction.addEventListener("change", () => this.request());
      // One motion at a time: what is apart is not on its way.
      this.apart.addEventListener("input", () => {
        this.stop();
        this.putIn.value = this.putIn.max;
        this.request();
      });
      this.putIn.addEventListener("input", () => {
        this.stop();
        this.apart.value = 0;
        this.request();
      });
      this.control("why").hidden = !this.look.cut;
      this.apart.closest(".model-row").hidden = !this.motions.includes("apart");
      this.putIn.closest(".model-row").hidden = !this.motions.includes("put in");
      this.canvas.addEventListener("keydown", (event) => this.key(event));
      this.canvas.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
      this.addPointers();
    }

    key(event) {
      if (event.ctrlKey || event.altKey || event.metaKey) return;
      const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
      const way = arrows[event.key];
      if (way && event.shiftKey) this.move(0.05 * way[0], 0.05 * way[1]);
      else if (way) this.turn(-5 * way[0], -5 * way[1]);
      else if (event.key === "+" || event.key === "=") this.zoomBy(1.1);
      else if (event.key === "-") this.zoomBy(1 / 1.1);
      else if (event.key === "Home") this.reset();
      else return;
      event.preventDefault();
      this.request();
    }

    // The wheel scrolls the page, unless the model is what one is at.
    wheel(event) {
      if (!event.ctrlKey && document.activeElement !== this.canvas) return;
      event.preventDefault();
      this.zoomBy(Math.exp(-0.002 * event.deltaY * (event.deltaMode === 1 ? 20 : 1)));
      this.request();
    }

    // One turns, with Shift it moves; two move and zoom.
    addPointers() {
      const down = new Map();
      const spread = () => {
        const [a, b] = [...down.values()];
        return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, size: Math.hypot(a.x - b.x, a.y - b.y) };
      };
      this.canvas.addEventListener("pointerdown", (event) => {
        if (event.button !== 0) return;
        this.canvas.setPointerCapture(event.pointerId);
        down.set(event.pointerId, { x: event.clientX, y: event.clientY });
      });
      this.canvas.addEventListener("pointermove", (event) => {
        const last = down.get(event.pointerId);
        if (!last) return;
        const before = down.size === 2 ? spread() : last;
        down.set(event.pointerId, { x: event.clientX, y: event.clientY });
        const now = down.size === 2 ? spread() : down.get(event.pointerId);
        const high = this.canvas.clientHeight;
        const [x, y] = [(now.x - before.x) / high, (now.y - before.y) / high];
        if (down.size === 2) {
          this.move(x, -y);
          if (before.size > 0 && now.size > 0) this.zoomBy(now.size / before.size);
        } else if (event.shiftKey) this.move(x, -y);
        else this.turn(-180 * x, 180 * y);
        this.request();
      });
      for (const end of ["pointerup", "pointercancel", "lostpointercapture"])
        this.canvas.addEventListener(end, (event) => down.delete(event.pointerId));
    }

    // The eye goes round by degrees, so that the model turns the other way; never over the top.
    turn(across, over) {
      this.across += across * DEGREE;
      this.over = Math.min(89, Math.max(-89, this.over / DEGREE + over)) * DEGREE;
    }

    zoomBy(factor) {
      this.zoom = Math.min(20, Math.max(0.3, this.zoom * factor));
    }

    // The picture goes by a share of its height.
    move(right, up) {
      const { height } = this.view();
      const [x, y] = [0, 1].map((column) => new THREE.Vector3().setFromMatrixColumn(this.camera.matrixWorld, column));
      this.shift.addScaledVector(x, (-right * height) / this.zoom).addScaledVector(y, (-up * height) / this.zoom);
    }

    start() {
      this.apart.value = 0;
      this.playing = performance.now();
      this.play.textContent = this.play.dataset.stop;
      this.request();
    }

    stop() {
      this.playing = null;
      this.play.textContent = this.play.dataset.play;
    }

    showWhy() {
      this.stop();
      this.apart.value = 0;
      this.putIn.value = this.putIn.max;
      const { axis, at } = this.look.cut;
      this.direction.value = axis;
      this.faceCut(axis);
      const [first, last] = this.span(axis);
      const share = Math.min(1, Math.max(0, (at - first) / (last - first)));
      this.cut.value = Math.max(this.cut.step, share * this.cut.max);
      this.exact = this.look.cut; // a slider has steps
      this.exactValue = this.cut.value;
    }

    // Nearly square on, from the side that is cut away: one that is from above, from steeply above.
    faceCut(axis) {
      const sign = this.towardEye(axis);
      const round = [[sign, 0.35], [0.35, sign], [Math.cos(this.across), Math.sin(this.across)]][axis];
      this.across = Math.atan2(round[1], round[0]);
      this.over = (axis === 2 ? 65 * sign : 20) * DEGREE;
      this.zoom = 1.2;
      this.shift.set(0, 0, 0);
    }

    // --- drawing ---

    share(slider) {
      return slider.value / slider.max;
    }

    towardEye(axis) {
      return this.look.toward[axis] < 0 ? -1 : 1;
    }

    // Where a cut along an axis begins and ends: from the side of the eye, a little within either side.
    span(axis) {
      const [low, high] = [this.room.min.getComponent(axis), this.room.max.getComponent(axis)];
      return this.towardEye(axis) > 0 ? [high, low] : [low, high];
    }

    plane() {
      if (this.cut.value <= 0) return null;
      const axis = Number(this.direction.value);
      const [first, last] = this.span(axis);
      const exact = this.exact && this.exact.axis === axis && this.exactValue === this.cut.value;
      const at = exact ? this.exact.at : first + (last - first) * this.share(this.cut);
      const normal = new THREE.Vector3().setComponent(axis, -this.towardEye(axis));
      return new THREE.Plane(normal, -normal.getComponent(axis) * at);
    }

    // The view of the moment: it steps back from what goes apart or comes in.
    view() {
      const { rest } = this.look;
      const apart = this.share(this.apart);
      const other = apart > 0 ? this.look.apart : this.look["put in"];
      const share = apart > 0 ? apart : Math.min(1, 3 * (1 - this.share(this.putIn)));
      const target = new THREE.Vector3(...rest.target).lerp(new THREE.Vector3(...other.target), share);
      return { target, height: rest.height + (other.height - rest.height) * share };
    }

    request() {
      if (!this.requested) this.requested = requestAnimationFrame((now) => this.draw(now));
    }

    draw(now) {
      this.requested = null;
      if (this.playing) this.step(now);
      for (const slider of [this.cut, this.apart, this.putIn])
        slider.setAttribute("aria-valuetext", `${Math.round(100 * this.share(slider))} %`);
      const apart = this.share(this.apart);
      for (const part of this.parts)
        if (apart > 0) part.stand("apart", apart);
        else part.stand("put in", this.share(this.putIn));
      this.placeCamera();
      this.placeCut();
      this.renderer.render(this.scene, this.camera);
    }

    step(now) {
      let share = Math.max(0, now - this.playing) / 1000 / PLAY_SECONDS;
      if (share >= 1) this.stop();
      else this.request();
      const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
      if (still) share = Math.floor(share * (STILLS - 1)) / (STILLS - 1);
      this.putIn.value = Math.min(1, share) * this.putIn.max;
    }

    // The eye stays outside of everything, and the field narrows instead: nothing that a cut fills may be in its back.
    placeCamera() {
      const [width, height] = [this.canvas.clientWidth, this.canvas.clientHeight];
      const aspect = width / Math.max(1, height);
      this.renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
      const size = this.renderer.getSize(new THREE.Vector2());
      if (size.x !== width || size.y !== height) this.renderer.setSize(width, height, false);

      const view = this.view();
      const target = view.target.clone().add(this.shift);
      let reach = 0;
      for (const part of this.parts)
        for (const end of [part.box.min, part.box.max])
          reach = Math.max(reach, part.group.position.distanceTo(target) + end.length());
      const seen = (view.height * Math.max(1, WIDE / aspect)) / this.zoom;
      const far = Math.max(view.height / 2 / Math.tan(FIELD / 2), 1.05 * reach + 1);
      const [x, y] = [Math.cos(this.across), Math.sin(this.across)].map((each) => each * Math.cos(this.over));
      this.camera.position.set(x, y, Math.sin(this.over)).multiplyScalar(far).add(target);
      this.camera.lookAt(target);
      this.camera.fov = (2 * Math.atan(seen / 2 / far)) / DEGREE;
      this.camera.aspect = aspect;
      this.camera.near = Math.max(far - reach, 0.01 * far);
      this.camera.far = far + reach;
      this.camera.updateProjectionMatrix();
      this.camera.updateMatrixWorld();
      this.reach = reach;
    }

    placeCut() {
      const plane = this.plane();
      const planes = plane ? [plane] : [];
      const toward = this.camera.getWorldDirection(new THREE.Vector3());
      const aside = Boolean(plane) && Math.abs(plane.normal.dot(toward)) < 0.8; // else hints would lie over the cut
      for (const part of this.parts) {
        const { surface, edges, hints, counts, cap } = part;
        for (const each of [surface, edges, ...(counts || [])]) if (each) each.material.clippingPlanes = planes;
        if (hints) hints.visible = aside && !part.clash;
        for (const each of counts || []) each.visible = Boolean(plane);
        // A cut opens the view by itself.
        const seenThrough = part.clash || (part.cover < 1 && !plane);
        if (surface) {
          surface.material.transparent = seenThrough;
          surface.material.depthWrite = !seenThrough;
          surface.material.uniforms.cover.value = seenThrough ? part.cover : 1;
        }
        if (cap) {
          cap.visible = Boolean(plane) && part.group.visible;
          if (plane) this.layOn(cap, plane);
        }
        const pitch = (part.clash ? 12 : 8) * this.renderer.getPixelRatio();
        if (cap) cap.material.uniforms.pitch.value = pitch;
        if (part.clash && surface) surface.material.uniforms.pitch.value = pitch;
      }
      this.placeOutline(plane);
    }

    // Of what is cut. Found anew only where something moved, not while one turns it.
    placeOutline(plane) {
      this.outline.visible = Boolean(plane);
      const now = plane && [...plane.normal.toArray(), plane.constant, this.apart.value, this.putIn.value].join();
      if (!plane || now === this.outlined) return;
      this.outlined = now;
      const ends = [];
      for (const part of this.parts) if (part.group.visible) part.cutLines(plane, ends);
      this.outline.geometry.dispose();
      this.outline.geometry = new THREE.BufferGeometry();
      this.outline.geometry.setAttribute("position", new THREE.Float32BufferAttribute(ends, 3));
    }

    layOn(cap, plane) {
      plane.projectPoint(new THREE.Vector3(...this.look.rest.target), cap.position);
      cap.quaternion.setFromUnitVectors(new THREE.Vector3(0, 0, 1), plane.normal);
      cap.scale.setScalar(3 * this.reach);
    }

    // From the page: light or dark as its paper is.
    takeColours() {
      const style = getComputedStyle(this.figure.querySelector(".model-view"));
      const paper = new THREE.Color(style.backgroundColor.replace(/, *0\)/, ")"));
      const ink = new THREE.Color(style.color);
      const dark = 0.3 * paper.r + 0.59 * paper.g + 0.11 * paper.b < 0.5;
      const paintOf = (object) => new THREE.Color(dark ? object.paint.dark : object.paint.light);
      this.scene.background.copy(paper);
      this.outline.material.color.copy(ink);
      for (const { surface, edges, hints, cap, clash } of this.parts) {
        for (const lines of [edges, hints]) if (lines) lines.material.color.copy(paintOf(lines));
        if (surface) surface.material.uniforms.colour.value.copy(clash ? paper : paintOf(surface));
        if (surface && clash) surface.material.uniforms.ink.value.copy(paintOf(surface));
        if (cap) cap.material.uniforms.colour.value.copy(paintOf(cap).lerp(dark ? paper : WHITE, 0.35));
        if (cap) cap.material.uniforms.ink.value.copy(paper).lerp(ink, 0.5);
      }
      this.request();
    }
  }

  // --- the page ---

  const start = (figure) => {
    const file = readGlb(bytesOf(figure.querySelector(".model-data").textContent));
    if (!file.nodes) return; // there is nothing in it: the picture stays
    const canvas = figure.querySelector("canvas");
    const wish = { antialias: true, alpha: false, stencil: true };
    const context = canvas.getContext("webgl2", wish) || canvas.getContext("webgl", wish);
    if (context) new Figure(figure, file, context); // else likewise
  };

  const figures = document.querySelectorAll("figure.model");
  // A browser keeps few of these going, so that those begin that are come near to.
  const watch = new IntersectionObserver(
    (entries) => {
      for (const { isIntersecting, target } of entries) {
        if (!isIntersecting) continue;
        watch.unobserve(target);
        start(target);
      }
    },
    { rootMargin: "400px" }
  );
  figures.forEach((figure) => watch.observe(figure));
})();

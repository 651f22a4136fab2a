
(() => {
	"use strict";
	const data = JSON.parse(document.getElementById("data").textContent);
	const rule = document.querySelector("form.rule");
	if (!rule) return;
	const slider = rule.querySelector("input");
	const all = (selector, root = document) => Array.from(root.querySelectorAll(selector));
	const last = data.travel.length - 1;

	// at gives the value of a column at a station; a design that has reached
	// its end stays there.
	const at = (column, station) => {
		const values = data.columns[column];
		return values[Math.min(station, values.length - 1)];
	};
	const fixed = (value, decimals) => {
		if (value === null) return "–";
		const text = value.toFixed(decimals);
		return Number(text) === 0 ? text.replace("-", "") : text;
	};

	// Linkages: every piece has a transform for each station.
	const linkages = all("[data-linkage]").map((element) => ({
		drawing: data.linkages[Number(element.dataset.linkage)],
		element,
		groups: [],
	}));
	const gather = (linkage, root) => {
		for (const group of all("[data-piece]", root)) {
			linkage.groups.push({ group, way: linkage.drawing.pieces[Number(group.dataset.piece)] });
		}
	};
	for (const linkage of linkages) gather(linkage, linkage.element);
	const pose = (station) => {
		for (const { groups } of linkages) {
			for (const { group, way } of groups) {
				const t = way[Math.min(station, way.length - 1)];
				group.setAttribute("transform", t.length === 2 ? `translate(${t})` : `matrix(${t})`);
			}
		}
	};

	// Curves: a line across the panel, a dot on each curve, its value over the panel.
	const draw = (name, attributes, parent) => {
		const element = document.createElementNS("http://www.w3.org/2000/svg", name);
		for (const key in attributes) element.setAttribute(key, attributes[key]);
		parent.appendChild(element);
		return element;
	};
	const panels = [];
	const figures = all("[data-figure]").map((element) => {
		const svg = element.querySelector("svg");
		const own = data.figures[Number(element.dataset.figure)].panels.map((panel) => {
			const cursor = draw("g", { class: "cursor", "aria-hidden": "true" }, svg);
			const made = {
				panel,
				line: panel.along ? draw("line", {}, cursor) : null,
				dots: panel.lines.map((line) => draw("circle", { r: 4, style: `stroke:${line.ink}` }, cursor)),
				values: draw("text", { x: panel.frame.right, y: panel.frame.top - 14 }, cursor),
			};
			made.spans = panel.lines.map((line) => draw("tspan", { dx: 9, style: `fill:${line.ink}` }, made.values));
			panels.push(made);
			return made;
		});
		return { svg, panels: own };
	});
	const px = (frame, x) => frame.left + ((x - frame.xMin) / (frame.xMax - frame.xMin)) * (frame.right - frame.left);
	const py = (frame, y) => frame.bottom - ((y - frame.yMin) / (frame.yMax - frame.yMin)) * (frame.bottom - frame.top);
	const point = (station) => {
		for (const { panel, line, dots, values, spans } of panels) {
			const frame = panel.frame;
			if (line) {
				const x = px(frame, data.travel[station]);
				for (const [key, value] of [["x1", x], ["x2", x], ["y1", frame.top], ["y2", frame.bottom]]) line.setAttribute(key, value);
			}
			panel.lines.forEach((curve, i) => {
				const x = at(curve.x, station), y = at(curve.y, station);
				dots[i].setAttribute("visibility", x === null || y === null ? "hidden" : "visible");
				if (x !== null && y !== null) {
					dots[i].setAttribute("cx", px(frame, x));
					dots[i].setAttribute("cy", py(frame, y));
				}
				spans[i].textContent = fixed(y, panel.decimals);
			});
			values.setAttribute("visibility", panel.along ? "visible" : "hidden");
		}
	};

	// Tables and the words over the rule.
	const cells = all("[data-column]");
	const outputs = all("[data-travel]");
	const words = (station) => `${data.travel[station].toFixed(1)} mm`;
	const tell = (station) => {
		for (const cell of cells) cell.textContent = fixed(at(Number(cell.dataset.column), station), Number(cell.dataset.decimals));
		for (const output of outputs) output.textContent = words(station);
	};

	let shown = -1;
	const show = (station) => {
		if (station === shown) return;
		shown = station;
		pose(station);
		point(station);
		tell(station);
	};
	const settle = () => {
		const station = Number(slider.value);
		slider.setAttribute("aria-valuetext", `${words(station)} of ${words(last)}`);
		show(station);
	};
	const go = (station) => {
		slider.value = station;
		settle();
	};
	slider.addEventListener("input", settle);
	rule.addEventListener("submit", (event) => event.preventDefault());
	for (const button of all("[data-station]", rule)) button.addEventListener("click", () => go(Number(button.dataset.station)));

	// A pointer over a panel looks ahead; a click goes there.
	for (const { svg, panels: own } of figures) {
		const station = (event) => {
			const box = svg.getBoundingClientRect();
			const scale = svg.viewBox.baseVal.width / box.width;
			const x = (event.clientX - box.left) * scale, y = (event.clientY - box.top) * scale;
			const over = own.find(({ panel: { along, frame } }) => along && y >= frame.top && y <= frame.bottom && x >= frame.left - 6 && x <= frame.right + 6);
			if (!over) return -1;
			const { frame } = over.panel;
			const travel = frame.xMin + ((x - frame.left) / (frame.right - frame.left)) * (frame.xMax - frame.xMin);
			return data.travel.reduce((best, w, i) => (Math.abs(w - travel) < Math.abs(data.travel[best] - travel) ? i : best), 0);
		};
		svg.addEventListener("pointermove", (event) => {
			if (event.pointerType === "touch") return;
			const i = station(event);
			show(i < 0 ? Number(slider.value) : i);
		});
		svg.addEventListener("pointerleave", () => show(Number(slider.value)));
		svg.addEventListener("click", (event) => {
			const i = station(event);
			if (i >= 0) go(i);
		});
	}

	// The pocket: copies of the first drawings without their words.
	const pocketed = linkages.slice(0, 3);
	if (pocketed.length > 0) {
		const pocket = document.createElement("div");
		pocket.className = "pocket";
		pocket.setAttribute("aria-hidden", "true");
		for (const linkage of pocketed) {
			const copy = linkage.element.querySelector("svg").cloneNode(true);
			const { left, top, right, bottom } = linkage.drawing.frame;
			copy.setAttribute("viewBox", `${left} ${top} ${right - left} ${bottom - top}`);
			copy.setAttribute("width", right - left);
			copy.setAttribute("height", bottom - top);
			gather(linkage, copy);
			pocket.appendChild(copy);
		}
		document.body.appendChild(pocket);
		const visible = new Set();
		new IntersectionObserver((entries) => {
			for (const entry of entries) visible[entry.isIntersecting ? "add" : "delete"](entry.target);
			pocket.classList.toggle("shown", visible.size === 0);
		}, { threshold: 0.35 }).observe(pocketed[0].element);
	}

	// On paper all stands at the start, as the words of the drawings say.
	addEventListener("beforeprint", () => show(0));
	addEventListener("afterprint", settle);

	rule.hidden = false;
	settle();
})();

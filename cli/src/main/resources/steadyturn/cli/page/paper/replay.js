
// Moves the bar of a replay when its reader asks for it; without this script the still picture stays.
document.querySelectorAll(".replay").forEach(function (box) {
  var frames = box.dataset.frames.split(";").map(function (row) { return row.split(",").map(Number); });
  var bar = box.querySelector("svg").lastElementChild;
  var end = frames[frames.length - 1][0];
  var still = matchMedia("(prefers-reduced-motion: reduce)");
  var run = 0;
  function show(ms) {
    var k = 1;
    while (k < frames.length - 1 && frames[k][0] < ms) { k++; }
    var a = frames[k - 1], b = frames[k];
    var part = Math.max(0, Math.min(1, (ms - a[0]) / (b[0] - a[0] || 1)));
    ["x1", "y1", "x2", "y2"].forEach(function (name, i) {
      bar.setAttribute(name, a[i + 1] + part * (b[i + 1] - a[i + 1]));
    });
  }
  function start(pace) {
    var own = ++run, from;
    function step(now) {
      if (own !== run) { return; }
      from = from === undefined ? now : from;
      var ms = (now - from) * pace;
      show(still.matches ? Math.floor(ms / end * 4) * end / 4 : ms);
      if (ms <= end) { requestAnimationFrame(step); }
    }
    requestAnimationFrame(step);
  }
  box.querySelectorAll("button").forEach(function (button) {
    button.addEventListener("click", function () { start(Number(button.dataset.pace)); });
  });
  box.hidden = false;
});

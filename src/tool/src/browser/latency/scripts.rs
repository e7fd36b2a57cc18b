//! The scripts that do in the page what a person does, and take the time.

/// Waits for the first answer. Hands back the page's own marks, then when the form was shown and when it was answered, in
/// milliseconds since navigation began.
pub const FIRST_ANSWER: &str = "let shown;
    for (;;) {
        if (find(PARTS.answer)) shown ??= performance.now();
        if (find(PARTS.setTemperature)) break;
        await new Promise((then) => setTimeout(then, 2));
    }
    const marks = performance.getEntriesByType('mark').map((mark) => [mark.name, mark.startTime]);
    return [...marks, ['shown', shown], ['answered', performance.now()]];";

/// Taps every order of the week; hands back the milliseconds from each tap to its answer.
pub const EVERY_ORDER: &str = "(await appears(PARTS.weekOrder)).closest('details').open = true;
    const times = [];
    for (let order = 0; order < every(PARTS.weekOrder).length; order += 1) {
        const start = performance.now();
        every(PARTS.weekOrder)[order].click();
        await answered();
        times.push(performance.now() - start);
    }
    return times;";

/// Changes something in the form of every order of the week, the way a person weighs one thing against another; hands back
/// the milliseconds from each tap to its answer.
pub const EVERY_CHANGE: &str = "for (const fold of all('details')) fold.open = true;
    const questions = [PARTS.priority, PARTS.coverageChoice, PARTS.useChoice, PARTS.roleChoice];
    const times = [];
    for (let order = 0; order < every(PARTS.weekOrder).length; order += 1) {
        every(PARTS.weekOrder)[order].click();
        await answered();
        for (const question of questions) {
            const others = every(question).filter((it) => it.getAttribute('aria-pressed') === 'false');
            for (const button of others.slice(0, 2)) {
                const start = performance.now();
                button.click();
                await answered();
                times.push(performance.now() - start);
            }
        }
    }
    return times;";

/// Has the browser write down how long each tap waits for the next thing that is painted (Event Timing, W3C).
pub const WATCH_TAPS: &str = "const taps = (window.taps = new Map());
    new PerformanceObserver((seen) => {
        for (const { interactionId, duration } of seen.getEntries()) {
            if (interactionId) taps.set(interactionId, Math.max(duration, taps.get(interactionId) ?? 0));
        }
    }).observe({ type: 'event', durationThreshold: 16 });";

/// What it wrote down.
pub const WATCHED_TAPS: &str = "return [...window.taps.values()];";

/// Drags the set point in a circle, one move a frame; hands back the milliseconds between frames.
pub const DRAG: &str = "const hit = find(PARTS.setPoint);
    const map = find(PARTS.map).getBoundingClientRect();
    const send = (type, turn) => hit.dispatchEvent(new PointerEvent(type, {
        bubbles: true, composed: true, pointerId: 1, buttons: 1,
        clientX: map.x + map.width * (0.5 + 0.3 * Math.cos(turn / 20)),
        clientY: map.y + map.height * (0.45 + 0.3 * Math.sin(turn / 20)),
    }));
    const frame = () => new Promise((then) => requestAnimationFrame(then));
    const frames = [];
    send('pointerdown', 0);
    let last = performance.now();
    for (let turn = 1; turn <= 240; turn += 1) {
        const now = await frame();
        frames.push(now - last);
        last = now;
        send('pointermove', turn);
    }
    send('pointerup', 240);
    return frames.slice(2);";

/// Answers every order of the week with every white and blocker of the library on the shelf, through the JS package; hands
/// back the milliseconds of each answer: on cloth as damp as it never was before, and asked again with a piece more.
pub const WHOLE_SHELF: &str = "const [orders] = arguments;
    const whitehold = await import(new URL('pkg/browser.js', location.href));
    const { whites, blockers } = whitehold.starterLibrary();
    const shelf = [...whites, ...blockers].map(({ id }) => id);
    const times = [[], []];
    for (let turn = 0; turn < 4; turn += 1) {
        for (const { order } of orders) {
            const shop = { ...order.shop, shelf, humidity_percent: 50 + turn };
            for (const [more, kind] of times.entries()) {
                const garments = order.garments.map((it) => ({ ...it, pieces: it.pieces + more }));
                const start = performance.now();
                whitehold.plan({ ...order, garments, shop });
                if (turn > 0) kind.push(performance.now() - start);
                await new Promise((then) => setTimeout(then));
            }
        }
    }
    return times;";

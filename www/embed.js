// All it takes to use the element: define it. A page with a bundler writes `import "whitehold/element.js"`.
import "./pkg/element.js";

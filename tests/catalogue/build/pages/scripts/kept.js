"use strict";(()=>{document.documentElement.classList.add("scripted");location.protocol==="file:"&&document.documentElement.classList.add("from-folder");})();

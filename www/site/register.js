navigator.serviceWorker?.register("./service.js").catch(console.warn);

//! A second thread of the program: texts go to it, texts come back.

use super::root::said;
use js_sys::{Function, JsString, Math, Object, Reflect};
use std::rc::Rc;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent, WorkerOptions, WorkerType};

/// What the thread says once it holds its lock.
const HELD: &str = "held";
/// What the thread says once it can be asked.
const READY: &str = "ready";
/// What it says when all texts of an answer have come.
const DONE: &str = "done";
/// What it says where it cannot be asked.
const GAVE_UP: &str = "gave up";

/// A running thread; it ends when this is dropped.
pub(crate) struct Worker {
    inner: web_sys::Worker,
    /// Gone when this is dropped: what is heard of the thread after that counts for nothing.
    _held: Rc<()>,
    _heard: Closure<dyn FnMut(MessageEvent)>,
}

/// What a thread says.
pub(crate) enum Heard {
    /// It can be asked now.
    Ready,
    /// A text of an answer.
    Answer(String),
    /// That was all of it.
    Done,
    /// It could not be started, or has come to grief.
    Ended,
}

impl Worker {
    /// Starts a thread; none where the browser has no workers or the page does not say where its
    /// files are.
    pub(crate) fn hire(hear: impl Fn(Heard) + Clone + 'static) -> Option<Self> {
        let options = WorkerOptions::new();
        options.set_type(WorkerType::Module);
        let inner = web_sys::Worker::new_with_options(&said("worker")?, &options).ok()?;
        let held = Rc::new(());
        let watched = Rc::downgrade(&held);
        let end = hear.clone();
        // Freed by the browser once nothing may call it any more.
        let ended = Closure::<dyn FnMut()>::new(move || {
            if watched.upgrade().is_some() {
                end(Heard::Ended);
            }
        });
        let ended: Function = ended.into_js_value().unchecked_into();
        inner.set_onerror(Some(&ended));
        // A name that no other thread of any window has.
        let lock = JsValue::from(Math::random());
        let places = Object::new();
        for name in ["script", "wasm"] {
            let set = Reflect::set(&places, &name.into(), &said(name)?.into());
            set.ok()?;
        }
        Reflect::set(&places, &"lock".into(), &lock).ok()?;
        let heard = Closure::new(move |message: MessageEvent| {
            if let Some(text) = message.data().as_string() {
                if text == HELD {
                    when_free(&lock, &ended);
                    return;
                }
                hear(match text.as_str() {
                    READY => Heard::Ready,
                    DONE => Heard::Done,
                    GAVE_UP => Heard::Ended,
                    _ => Heard::Answer(text),
                });
            }
        });
        inner.set_onmessage(Some(heard.as_ref().unchecked_ref()));
        inner.post_message(&places).ok()?;
        Some(Self {
            inner,
            _held: held,
            _heard: heard,
        })
    }

    /// Sends a text.
    pub(crate) fn tell(&self, text: &str) {
        // A thread that has ended answers no more, which is what its user sees anyway.
        let _ = self.inner.post_message(&JsString::from(text));
    }
}

/// Calls back once nobody holds a lock any more: the thread holds it for as long as it lives, so that
/// also one that the browser has ended without a word is missed. Not where there are no locks.
fn when_free(lock: &JsValue, then: &Function) -> Option<()> {
    let locks = Reflect::get(&web_sys::window()?.navigator(), &"locks".into()).ok()?;
    let request: Function = Reflect::get(&locks, &"request".into())
        .ok()?
        .dyn_into()
        .ok()?;
    request.call2(&locks, lock, then).ok().map(drop)
}

impl Drop for Worker {
    fn drop(&mut self) {
        self.inner.set_onmessage(None);
        self.inner.set_onerror(None);
        self.inner.terminate();
    }
}

/// The thread that the program runs in, when that is not the page's.
pub(crate) fn this_thread() -> Option<DedicatedWorkerGlobalScope> {
    js_sys::global().dyn_into().ok()
}

/// From a text that is asked to those that come back, by the second argument.
pub(crate) type Answer = fn(&str, &dyn Fn(&str));

/// Answers every text that the page sends, each with as many texts as it takes, for as long as the
/// thread lives.
pub(crate) fn serve(thread: DedicatedWorkerGlobalScope, answer: Answer) {
    let back = thread.clone();
    let heard = Closure::<dyn FnMut(MessageEvent)>::new(move |message: MessageEvent| {
        let say = |text: &str| {
            let _ = back.post_message(&JsValue::from(text));
        };
        if let Some(text) = message.data().as_string() {
            answer(&text, &say);
            say(DONE);
        }
    });
    thread.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    heard.forget();
    let _ = thread.post_message(&JsValue::from(READY));
}

/// Says that the thread cannot be asked.
pub(crate) fn give_up(thread: &DedicatedWorkerGlobalScope) {
    let _ = thread.post_message(&JsValue::from(GAVE_UP));
}

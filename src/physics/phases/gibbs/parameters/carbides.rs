//! Parameters of cementite, M7C3, M23C6 and M6C.
//!
//! Subset, with repairs told in the parent module, of `mf-steel.tdb` of LibreCalphad
//! (github.com/mfrichtl/librecalphad, commit ccd18dab28149f685acb7a1db6626e69f137f0a9), which is
//! under the licence that follows and must travel with copies. Digits as printed there.
//!
//! ```text
//! libreCalphad
//!
//! The MIT License (MIT)
//!
//! Copyright (c) 2024 Matthew Frichtl
//!
//! Permission is hereby granted, free of charge, to any person obtaining a copy
//! of this software and associated documentation files (the "Software"), to deal
//! in the Software without restriction, including without limitation the rights
//! to use, copy, modify, merge, publish, distribute, sublicense, and/or sell
//! copies of the Software, and to permit persons to whom the Software is
//! furnished to do so, subject to the following conditions:
//!
//! The above copyright notice and this permission notice shall be included in
//! all copies or substantial portions of the Software.
//!
//! THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR
//! IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY,
//! FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE
//! AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER
//! LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM,
//! OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN
//! THE SOFTWARE.
//! ```

use super::Component::{C, Cr, Fe, Mn, Mo, Ni, Si, V, W};
use super::Name::{
    GCR23C6, GFE3C, GFE23C6, GHSERCC, GHSERCR, GHSERFE, GHSERMN, GHSERMO, GHSERNI, GHSERSI, GHSERV,
    GHSERW, GMN23C6, GNI23C6, GV23C6,
};
use super::Term::{Inv1, K, Of, T, T2, TLnT};
use super::{Parameter, bm, g, tc};

/// Cementite, (Cr,Fe,Mn,Mo,Ni,Si,V,W)3(C)1.
#[rustfmt::skip]
pub(crate) const CEMENTITE: &[Parameter] = &[
    g(&[&[Cr], &[C]], 0, &[K(-48000.0), T(-9.28888), Of(GHSERCR, 3.0), Of(GHSERCC, 1.0)], "92LEEA"),
    g(&[&[Fe], &[C]], 0, &[Of(GFE3C, 1.0)], "10HAL"),
    bm(&[&[Fe], &[C]], 0, &[K(1.008)], "10HAL"),
    tc(&[&[Fe], &[C]], 0, &[K(485.0)], "10HAL"),
    g(&[&[Mn], &[C]], 0, &[K(-39644.0), T(3.04), Of(GHSERMN, 3.0), Of(GHSERCC, 1.0)], "10DJU"),
    g(&[&[Mo], &[C]], 0, &[K(77000.0), T(-57.4), Of(GHSERMO, 3.0), Of(GHSERCC, 1.0)], "88ANDD"),
    g(&[&[Ni], &[C]], 0, &[K(34700.0), T(-20.0), Of(GHSERNI, 3.0), Of(GHSERCC, 1.0)], "87GAB"),
    g(&[&[Si], &[C]], 0, &[K(250000.0), Of(GHSERSI, 3.0), Of(GHSERCC, 1.0)], "02GHOB"),
    g(&[&[V], &[C]], 0, &[K(-156971.0), T(601.922), TLnT(-100.438), Inv1(765557.0)], "91HUA"),
    g(&[&[W], &[C]], 0, &[K(54150.0), Of(GHSERW, 3.0), Of(GHSERCC, 1.0)], "87GUS"),
    g(&[&[Cr, Fe], &[C]], 0, &[K(14586.0), T(-9.18)], "14KHV"),
    g(&[&[Cr, Mn], &[C]], 0, &[K(9000.0)], "93LEEC"),
    g(&[&[Cr, Mo], &[C]], 0, &[K(40000.0)], "92HILA"),
    g(&[&[Cr, V], &[C]], 0, &[K(-29622.0), T(-8.0892)], "92LEEB"),
    g(&[&[Cr, V], &[C]], 1, &[K(-5160.0), T(-7.5711)], "92LEEB"),
    g(&[&[Fe, Mn], &[C]], 0, &[K(-7715.0), T(1.3687)], "11DJU"),
    g(&[&[Fe, Ni], &[C]], 0, &[K(28995.9)], "20LIU"),
    g(&[&[Fe, V], &[C]], 0, &[K(-45873.0), T(-12.414)], "91HUA"),
];

/// M7C3, (Cr,Fe,Mn,Mo,Ni,V,W)7(C)3.
#[rustfmt::skip]
pub(crate) const M7C3: &[Parameter] = &[
    g(&[&[Cr], &[C]], 0, &[K(-201690.0), T(1103.128), TLnT(-190.177), T2(-0.0578207)], "92LEEA"),
    g(&[&[Fe], &[C]], 0, &[K(13200.0), Of(GFE3C, 2.333333), Of(GHSERCC, 0.666667)], "11DJU"),
    g(&[&[Mn], &[C]], 0, &[K(-106695.0), T(9.36), Of(GHSERMN, 7.0), Of(GHSERCC, 3.0)], "10DJU"),
    g(&[&[Mo], &[C]], 0, &[K(-140415.0), T(24.24), Of(GHSERMO, 7.0), Of(GHSERCC, 3.0)], "92QIU"),
    g(&[&[Ni], &[C]], 0, &[K(107130.0), T(-36.605), Of(GHSERNI, 7.0), Of(GHSERCC, 3.0)], "92LEEA"),
    g(&[&[V], &[C]], 0, &[K(-454245.0), T(1518.48), TLnT(-250.981), Inv1(2.148691)], "91HUA"),
    g(&[&[W], &[C]], 0, &[K(138000.0), T(-50.0), Of(GHSERW, 7.0), Of(GHSERCC, 3.0)], "88GUSB"),
    g(&[&[Cr, Fe], &[C]], 0, &[K(81940.0), T(-61.86)], "14KHV"),
    g(&[&[Cr, Fe], &[C]], 1, &[K(-7310.0)], "14KHV"),
    g(&[&[Cr, Fe], &[C]], 2, &[K(27050.0)], "14KHV"),
    g(&[&[Cr, Mn], &[C]], 0, &[K(72737.0), T(-56.4964)], "93LEEC"),
    g(&[&[Cr, Mo], &[C]], 0, &[K(100000.0)], "05BRA"),
    g(&[&[Cr, Ni], &[C]], 0, &[K(100000.0)], "92LEEA"),
    g(&[&[Cr, V], &[C]], 0, &[K(-110271.0)], "92LEEB"),
    g(&[&[Fe, Mn], &[C]], 0, &[K(20157.0), T(-24.7104)], "11DJU"),
    g(&[&[Cr, Fe, Ni], &[C]], 0, &[K(-323854.0)], "91HIL"),
    g(&[&[Cr, Fe, V], &[C]], 0, &[K(-250158.0)], "92LEEB"),
];

/// M23C6, (Cr,Fe,Mn,Ni,V)20(Cr,Fe,Mn,Mo,Ni,V,W)3(C)6.
#[rustfmt::skip]
pub(crate) const M23C6: &[Parameter] = &[
    g(&[&[Cr], &[Cr], &[C]], 0, &[Of(GCR23C6, 1.0)], "92LEEA"),
    g(&[&[Cr], &[Fe], &[C]], 0, &[Of(GCR23C6, 0.8695652), Of(GFE23C6, 0.1304348)], "92LEEA"),
    g(&[&[Cr], &[Mn], &[C]], 0, &[Of(GCR23C6, 0.869565), Of(GMN23C6, 0.130435)], "93LEEC"),
    g(&[&[Cr], &[Mo], &[C]], 0, &[K(-439117.0), T(-50.0535), Of(GHSERCR, 20.0), Of(GHSERMO, 3.0), Of(GHSERCC, 6.0)], "92QIU"),
    g(&[&[Cr], &[Ni], &[C]], 0, &[Of(GCR23C6, 0.8695652), Of(GNI23C6, 0.1304348)], "92LEEA"),
    g(&[&[Cr], &[V], &[C]], 0, &[Of(GCR23C6, 0.8695652), Of(GV23C6, 0.1304348)], "92LEEB"),
    g(&[&[Cr], &[W], &[C]], 0, &[K(18850.0), T(-75.4), Of(GCR23C6, 0.8695652), Of(GHSERW, 3.0), Of(GHSERCC, 0.7826090)], "88GUSB"),
    g(&[&[Fe], &[Cr], &[C]], 0, &[Of(GFE23C6, 0.8695652), Of(GCR23C6, 0.1304348)], "92LEEB"),
    g(&[&[Fe], &[Fe], &[C]], 0, &[Of(GFE23C6, 1.0)], "11DJU"),
    g(&[&[Fe], &[Mn], &[C]], 0, &[Of(GFE23C6, 0.869565), Of(GMN23C6, 0.130435)], "11DJU"),
    g(&[&[Fe], &[Mo], &[C]], 0, &[K(-76351.0), T(-5.0949), Of(GHSERFE, 20.0), Of(GHSERMO, 3.0), Of(GHSERCC, 6.0)], "92QIU"),
    g(&[&[Fe], &[Ni], &[C]], 0, &[Of(GFE23C6, 0.8695652), Of(GNI23C6, 0.1304348)], "23FRI"),
    g(&[&[Fe], &[V], &[C]], 0, &[Of(GFE23C6, 0.869565), Of(GV23C6, 0.130435)], "91HUA"),
    g(&[&[Fe], &[W], &[C]], 0, &[K(-103240.0), T(38.4), Of(GFE23C6, 0.8695652), Of(GHSERW, 3.0), Of(GHSERCC, 0.7826090)], "88GUSB"),
    g(&[&[Mn], &[Cr], &[C]], 0, &[Of(GMN23C6, 0.869565), Of(GCR23C6, 0.130435)], "93LEEC"),
    g(&[&[Mn], &[Fe], &[C]], 0, &[Of(GMN23C6, 0.869565), Of(GFE23C6, 0.130435)], "11DJU"),
    g(&[&[Mn], &[Mn], &[C]], 0, &[Of(GMN23C6, 1.0)], "10DJU"),
    g(&[&[Mn], &[Mo], &[C]], 0, &[Of(GHSERMN, 20.0), Of(GHSERMO, 3.0), Of(GHSERCC, 6.0)], "23FRI"),
    g(&[&[Mn], &[Ni], &[C]], 0, &[Of(GHSERMN, 20.0), Of(GHSERNI, 3.0), Of(GHSERCC, 6.0)], "23FRI"),
    g(&[&[Mn], &[V], &[C]], 0, &[Of(GMN23C6, 0.869565), Of(GV23C6, 0.130435)], "91HUA"),
    g(&[&[Mn], &[W], &[C]], 0, &[Of(GHSERMN, 20.0), Of(GHSERW, 3.0), Of(GHSERCC, 6.0)], "24FRI"),
    g(&[&[Ni], &[Cr], &[C]], 0, &[Of(GNI23C6, 0.8695652), Of(GCR23C6, 0.1304348)], "92LEEA"),
    g(&[&[Ni], &[Fe], &[C]], 0, &[Of(GNI23C6, 0.8695652), Of(GFE23C6, 0.1304348)], "23FRI"),
    g(&[&[Ni], &[Mn], &[C]], 0, &[Of(GHSERNI, 20.0), Of(GHSERMN, 3.0), Of(GHSERCC, 6.0)], "23FRI"),
    g(&[&[Ni], &[Mo], &[C]], 0, &[Of(GHSERNI, 20.0), Of(GHSERMO, 3.0), Of(GHSERCC, 6.0)], "23FRI"),
    g(&[&[Ni], &[Ni], &[C]], 0, &[Of(GNI23C6, 1.0)], "92LEEA"),
    g(&[&[Ni], &[V], &[C]], 0, &[Of(GHSERNI, 20.0), Of(GHSERV, 3.0), Of(GHSERCC, 6.0)], "23FRI"),
    g(&[&[Ni], &[W], &[C]], 0, &[Of(GHSERNI, 20.0), Of(GHSERW, 3.0), Of(GHSERCC, 6.0)], "24FRI"),
    g(&[&[V], &[Cr], &[C]], 0, &[Of(GV23C6, 0.8695652), Of(GCR23C6, 0.1304348)], "92LEEB"),
    g(&[&[V], &[Fe], &[C]], 0, &[Of(GV23C6, 0.869565), Of(GFE23C6, 0.10435)], "91HUA"),
    g(&[&[V], &[Mn], &[C]], 0, &[Of(GV23C6, 0.869565), Of(GMN23C6, 0.130435)], "91HUA"),
    g(&[&[V], &[Mo], &[C]], 0, &[Of(GHSERV, 20.0), Of(GHSERMO, 3.0), Of(GHSERCC, 6.0)], "23FRI"),
    g(&[&[V], &[Ni], &[C]], 0, &[Of(GHSERV, 20.0), Of(GHSERNI, 3.0), Of(GHSERCC, 6.0)], "23FRI"),
    g(&[&[V], &[V], &[C]], 0, &[Of(GV23C6, 1.0)], "91HUA"),
    g(&[&[V], &[W], &[C]], 0, &[Of(GHSERV, 20.0), Of(GHSERW, 3.0), Of(GHSERCC, 6.0)], "24FRI"),
    g(&[&[Cr], &[Cr, Fe], &[C]], 0, &[K(991.0)], "14KHV"),
    g(&[&[Cr], &[Cr, Fe], &[C]], 1, &[K(-6540.0)], "14KHV"),
    g(&[&[Cr, Fe], &[Cr], &[C]], 0, &[K(6609.0)], "14KHV"),
    g(&[&[Cr, Fe], &[Cr], &[C]], 1, &[K(-43600.0)], "14KHV"),
    g(&[&[Cr, Fe], &[Fe], &[C]], 0, &[K(6609.0)], "14KHV"),
    g(&[&[Cr, Fe], &[Fe], &[C]], 1, &[K(-43600.0)], "14KHV"),
    g(&[&[Cr, Fe], &[Mn], &[C]], 0, &[K(-205342.0), T(141.6667)], "93LEEC"),
    g(&[&[Cr, Fe], &[Mo], &[C]], 0, &[K(-177850.0), T(153.9050)], "92QIU"),
    g(&[&[Cr, Fe], &[V], &[C]], 0, &[K(-205342.0), T(141.6667)], "92LEEB"),
    g(&[&[Cr, Fe], &[W], &[C]], 0, &[K(18950.0)], "88GUSB"),
    g(&[&[Cr, Mn], &[Cr], &[C]], 0, &[K(-173680.0), T(160.0)], "93LEEC"),
    g(&[&[Cr, Mn], &[Cr], &[C]], 1, &[K(-286614.0)], "93LEEC"),
    g(&[&[Cr, Mn], &[Fe], &[C]], 0, &[K(-173680.0), T(160.0)], "93LEEC"),
    g(&[&[Cr, Mn], &[Fe], &[C]], 1, &[K(-286614.0)], "93LEEC"),
    g(&[&[Cr, Mn], &[Mn], &[C]], 0, &[K(-173680.0), T(160.0)], "93LEEC"),
    g(&[&[Cr, Mn], &[Mn], &[C]], 1, &[K(-286614.0)], "93LEEC"),
    g(&[&[Cr, Ni], &[Cr], &[C]], 0, &[K(100000.0)], "92LEEA"),
    g(&[&[Cr, Ni], &[Ni], &[C]], 0, &[K(100000.0)], "92LEEA"),
    g(&[&[Cr, V], &[Cr], &[C]], 0, &[K(-382069.0)], "92LEEB"),
    g(&[&[Cr, V], &[Fe], &[C]], 0, &[K(-382069.0)], "92LEEB"),
    g(&[&[Cr, V], &[V], &[C]], 0, &[K(-382069.0)], "92LEEB"),
    g(&[&[Cr, Fe, V], &[Cr], &[C]], 0, &[K(-1499585.0)], "92LEEB"),
    g(&[&[Cr, Fe, V], &[Fe], &[C]], 0, &[K(-1499585.0)], "92LEEB"),
    g(&[&[Cr, Fe, V], &[V], &[C]], 0, &[K(-1499585.0)], "92LEEB"),
    g(&[&[Fe], &[Cr, Fe], &[C]], 0, &[K(991.0)], "14KHV"),
    g(&[&[Fe], &[Cr, Fe], &[C]], 1, &[K(-6540.0)], "14KHV"),
    g(&[&[Fe, Mn], &[Cr, Fe], &[C]], 0, &[K(-100000.0)], "93LEEC"),
    g(&[&[Fe, Mn], &[Cr, Mn], &[C]], 0, &[K(-100000.0)], "93LEEC"),
    g(&[&[Fe, Mn], &[Fe, Mn], &[C]], 0, &[K(-95000.0)], "11DJU"),
];

/// M6C, (Fe)2(Fe,Mo,W)2(Cr,Fe,Mo,W)2(C)1.
#[rustfmt::skip]
pub(crate) const M6C: &[Parameter] = &[
    g(&[&[Fe], &[Fe], &[Cr], &[C]], 0, &[Of(GHSERFE, 2.0), Of(GHSERFE, 2.0), Of(GHSERCR, 2.0), Of(GHSERCC, 1.0)], "23FRI"),
    g(&[&[Fe], &[Fe], &[Fe], &[C]], 0, &[Of(GHSERFE, 2.0), Of(GHSERFE, 2.0), Of(GHSERFE, 2.0), Of(GHSERCC, 1.0)], "23FRI"),
    g(&[&[Fe], &[Fe], &[Mo], &[C]], 0, &[Of(GHSERFE, 2.0), Of(GHSERFE, 2.0), Of(GHSERMO, 2.0), Of(GHSERCC, 1.0)], "23FRI"),
    g(&[&[Fe], &[Fe], &[W], &[C]], 0, &[K(-63120.0), T(20.14), Of(GHSERFE, 4.0), Of(GHSERW, 2.0), Of(GHSERCC, 1.0)], "87GUS"),
    g(&[&[Fe], &[Mo], &[Cr], &[C]], 0, &[K(-25298.0), T(-54.8698), Of(GHSERFE, 2.0), Of(GHSERMO, 2.0), Of(GHSERCR, 2.0), Of(GHSERCC, 1.0)], "92QIU"),
    g(&[&[Fe], &[Mo], &[Fe], &[C]], 0, &[K(77705.0), T(-101.5), Of(GHSERFE, 4.0), Of(GHSERMO, 2.0), Of(GHSERCC, 1.0)], "88ANDD"),
    g(&[&[Fe], &[Mo], &[Mo], &[C]], 0, &[K(-122410.0), T(30.25), Of(GHSERFE, 2.0), Of(GHSERMO, 4.0), Of(GHSERCC, 1.0)], "88ANDD"),
    g(&[&[Fe], &[Mo], &[W], &[C]], 0, &[Of(GHSERFE, 2.0), Of(GHSERMO, 2.0), Of(GHSERW, 2.0), Of(GHSERCC, 1.0)], "23FRI"),
    g(&[&[Fe], &[W], &[Cr], &[C]], 0, &[K(37500.0), T(-80.0), Of(GHSERFE, 2.0), Of(GHSERW, 2.0), Of(GHSERCR, 2.0), Of(GHSERCC, 1.0)], "88GUSB"),
    g(&[&[Fe], &[W], &[Fe], &[C]], 0, &[Of(GHSERFE, 2.0), Of(GHSERW, 2.0), Of(GHSERFE, 2.0), Of(GHSERCC, 1.0)], "23FRI"),
    g(&[&[Fe], &[W], &[Mo], &[C]], 0, &[Of(GHSERFE, 2.0), Of(GHSERW, 2.0), Of(GHSERMO, 2.0), Of(GHSERCC, 1.0)], "23FRI"),
    g(&[&[Fe], &[W], &[W], &[C]], 0, &[K(-69540.0), T(20.14), Of(GHSERFE, 2.0), Of(GHSERW, 4.0), Of(GHSERCC, 1.0)], "87GUS"),
    g(&[&[Fe], &[Fe, W], &[W], &[C]], 0, &[K(-43700.0)], "87GUS"),
    g(&[&[Fe], &[Mo], &[Fe, Mo], &[C]], 0, &[K(-37700.0)], "88ANDD"),
    g(&[&[Fe], &[W], &[Cr, Fe], &[C]], 0, &[K(-30000.0)], "88GUSB"),
];

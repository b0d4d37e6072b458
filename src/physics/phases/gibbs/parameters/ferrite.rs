//! Parameters of ferrite.
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

use super::Component::{C, Cr, Fe, Mn, Mo, Ni, Si, V, Va, W};
use super::Name::{
    GBCCMN, GBCCNI, GBCCSI, GHSERCC, GHSERCR, GHSERFE, GHSERMN, GHSERMO, GHSERNI, GHSERV, GHSERW,
};
use super::Term::{K, Of, T, T2, T3, T7, TLnT};
use super::{Parameter, bm, g, tc};

/// Ferrite, (Cr,Fe,Mn,Mo,Ni,Si,V,W)1(C,Va)3.
#[rustfmt::skip]
pub(crate) const BCC_A2: &[Parameter] = &[
    g(&[&[Cr], &[C]], 0, &[K(416000.0), Of(GHSERCR, 1.0), Of(GHSERCC, 3.0)], "87ANDB"),
    bm(&[&[Cr], &[C]], 0, &[K(-0.008)], "88ANDA"),
    tc(&[&[Cr], &[C]], 0, &[K(-311.50)], "88ANDA"),
    g(&[&[Cr], &[Va]], 0, &[Of(GHSERCR, 1.0)], "91DIN"),
    bm(&[&[Cr], &[Va]], 0, &[K(-0.008)], "91DIN"),
    tc(&[&[Cr], &[Va]], 0, &[K(-311.50)], "91DIN"),
    g(&[&[Fe], &[C]], 0, &[K(322050.0), T(75.667), Of(GHSERFE, 1.0), Of(GHSERCC, 3.0)], "85GUS"),
    bm(&[&[Fe], &[C]], 0, &[K(2.22)], "85GUS"),
    tc(&[&[Fe], &[C]], 0, &[K(1043.0)], "85GUS"),
    g(&[&[Fe], &[Va]], 0, &[Of(GHSERFE, 1.0)], "91DIN"),
    bm(&[&[Fe], &[Va]], 0, &[K(2.22)], "91DIN"),
    tc(&[&[Fe], &[Va]], 0, &[K(1043.0)], "91DIN"),
    g(&[&[Mn], &[C]], 0, &[K(10000.0), T(30.0), Of(GHSERMN, 1.0), Of(GHSERCC, 3.0)], "10DJU"),
    g(&[&[Mn], &[Va]], 0, &[Of(GBCCMN, 1.0)], "05GUO"),
    bm(&[&[Mn], &[Va]], 0, &[K(-0.27)], "91DIN"),
    tc(&[&[Mn], &[Va]], 0, &[K(-580.0)], "91DIN"),
    g(&[&[Mo], &[C]], 0, &[K(331000.0), T(-75.0), Of(GHSERMO, 1.0), Of(GHSERCC, 3.0)], "88ANDC"),
    g(&[&[Mo], &[Va]], 0, &[Of(GHSERMO, 1.0)], "91DIN"),
    g(&[&[Ni], &[C]], 0, &[K(4E5), T(-100.0), Of(GHSERNI, 1.0), Of(GHSERCC, 3.0)], "87GAB"),
    g(&[&[Ni], &[Va]], 0, &[Of(GBCCNI, 1.0)], "05GUO"),
    bm(&[&[Ni], &[C]], 0, &[K(0.85)], "92LEEA"),
    bm(&[&[Ni], &[Va]], 0, &[K(0.52)], "11XIO"),
    tc(&[&[Ni], &[C]], 0, &[K(575.0)], "92LEEA"),
    tc(&[&[Ni], &[Va]], 0, &[K(456.0)], "11XIO"),
    g(&[&[Si], &[C]], 0, &[K(369050.0), T(-98.167), Of(GBCCSI, 1.0), Of(GHSERCC, 3.0)], "91LAC"),
    g(&[&[Si], &[Va]], 0, &[Of(GBCCSI, 1.0)], "91DIN"),
    g(&[&[V], &[C]], 0, &[K(108082.0), Of(GHSERV, 1.0), Of(GHSERCC, 3.0)], "06HU"),
    g(&[&[V], &[Va]], 0, &[Of(GHSERV, 1.0)], "91DIN"),
    g(&[&[W], &[C]], 0, &[K(3.751E5), T(-35.87), Of(GHSERW, 1.0), Of(GHSERCC, 3.0)], "87GUS"),
    g(&[&[W], &[Va]], 0, &[Of(GHSERW, 1.0)], "91DIN"),
    g(&[&[Cr], &[C, Va]], 0, &[T(-190.0)], "87ANDB"),
    g(&[&[Cr, Fe], &[C]], 0, &[K(-1320000.0), T(667.7)], "14KHV"),
    tc(&[&[Cr, Fe], &[C]], 0, &[K(1650.0)], "88ANDA"),
    tc(&[&[Cr, Fe], &[C]], 1, &[K(550.0)], "88ANDA"),
    bm(&[&[Cr, Fe], &[C]], 0, &[K(-0.85)], "88ANDA"),
    g(&[&[Cr, Fe], &[Va]], 0, &[K(24600.0), T(-14.98)], "17JAC"),
    g(&[&[Cr, Fe], &[Va]], 1, &[K(500.0), T(-1.5)], "17JAC"),
    g(&[&[Cr, Fe], &[Va]], 2, &[K(-14000.0), T(9.15)], "17JAC"),
    bm(&[&[Cr, Fe], &[Va]], 0, &[K(2.15)], "17JAC"),
    tc(&[&[Cr, Fe], &[Va]], 0, &[K(932.5)], "17JAC"),
    tc(&[&[Cr, Fe], &[Va]], 1, &[K(-548.2)], "17JAC"),
    g(&[&[Cr, Mo], &[Va]], 0, &[K(28890.0), T(-7.962)], "91FRI"),
    g(&[&[Cr, Mo], &[Va]], 1, &[K(5974.0), T(-2.428)], "91FRI"),
    g(&[&[Cr, Mn], &[C]], 0, &[K(-20328.0), T(18.7339)], "93LEEC"),
    g(&[&[Cr, Mn], &[C]], 1, &[K(-9162.0), T(4.4183)], "93LEEC"),
    g(&[&[Cr, Mn], &[Va]], 0, &[K(-20328.0), T(18.7339)], "93LEEB"),
    g(&[&[Cr, Mn], &[Va]], 1, &[K(-9162.0), T(4.4183)], "93LEEB"),
    bm(&[&[Cr, Mn], &[Va]], 0, &[K(0.48643)], "93LEEB"),
    bm(&[&[Cr, Mn], &[Va]], 2, &[K(-0.72035)], "93LEEB"),
    bm(&[&[Cr, Mn], &[Va]], 4, &[K(-1.93265)], "93LEEB"),
    tc(&[&[Cr, Mn], &[Va]], 0, &[K(-1325.0)], "93LEEB"),
    tc(&[&[Cr, Mn], &[Va]], 2, &[K(-1133.0)], "93LEEB"),
    tc(&[&[Cr, Mn], &[Va]], 4, &[K(-10294.0)], "93LEEB"),
    tc(&[&[Cr, Mn], &[Va]], 6, &[K(26706.0)], "93LEEB"),
    tc(&[&[Cr, Mn], &[Va]], 8, &[K(-28117.0)], "93LEEB"),
    g(&[&[Cr, Ni], &[C]], 0, &[K(-1226000.0), T(570.0)], "91HIL"),
    g(&[&[Cr, Ni], &[Va]], 0, &[K(14500.0), T(-9.0)], "16TAN"),
    g(&[&[Cr, Ni], &[Va]], 1, &[K(27500.0), T(-7.6)], "16TAN"),
    bm(&[&[Cr, Ni], &[Va]], 0, &[K(4.0)], "88GUSA"),
    tc(&[&[Cr, Ni], &[Va]], 0, &[K(2373.0)], "88GUSA"),
    tc(&[&[Cr, Ni], &[Va]], 1, &[K(617.0)], "88GUSA"),
    g(&[&[Cr, Si], &[Va]], 0, &[K(-77309.9324), T(-2.38320)], "09CHEA"),
    g(&[&[Cr, Si], &[Va]], 1, &[K(-53247.5616), T(13.58981)], "09CHEA"),
    g(&[&[Cr, V], &[Va]], 0, &[K(-8253.85), T(-3.61592)], "02GHOA"),
    g(&[&[Cr, V], &[Va]], 1, &[K(7494.82), T(-8.69424)], "02GHOA"),
    g(&[&[Cr, V], &[Va]], 2, &[K(-17599.07), T(10.13142)], "02GHOA"),
    g(&[&[Cr, V], &[Va]], 3, &[K(1042.58)], "02GHOA"),
    g(&[&[Cr, W], &[Va]], 0, &[K(31520.0)], "88GUSA"),
    g(&[&[Cr, W], &[Va]], 1, &[K(-1320.0)], "88GUSA"),
    g(&[&[Fe], &[C, Va]], 0, &[T(-190.0)], "85GUS"),
    g(&[&[Fe, Mn], &[C]], 0, &[K(34052.0), T(-23.467)], "90HUAB"),
    g(&[&[Fe, Mn], &[Va]], 0, &[K(-2759.0), T(1.237)], "89HUAA"),
    tc(&[&[Fe, Mn], &[Va]], 0, &[K(123.0)], "89HUAA"),
    g(&[&[Fe, Mo], &[C]], 0, &[K(-1226000.0), T(570.0)], "92HILA"),
    tc(&[&[Fe, Mo], &[C]], 0, &[K(335.0)], "88ANDD"),
    tc(&[&[Fe, Mo], &[C]], 1, &[K(526.0)], "88ANDD"),
    g(&[&[Fe, Mo], &[Va]], 0, &[K(38849.0), T(-9.539)], "14RAJ"),
    g(&[&[Fe, Mo], &[Va]], 1, &[K(-8988.0)], "14RAJ"),
    tc(&[&[Fe, Mo], &[Va]], 0, &[K(334.0)], "14RAJ"),
    tc(&[&[Fe, Mo], &[Va]], 1, &[K(531.0)], "14RAJ"),
    g(&[&[Fe, Ni], &[C]], 0, &[K(956.63), T(-1.28726)], "87GAB"),
    g(&[&[Fe, Ni], &[C]], 1, &[K(1789.03), T(-1.92912)], "87GAB"),
    g(&[&[Fe, Ni], &[Va]], 0, &[K(-7909.04)], "11XIO"),
    g(&[&[Fe, Ni], &[Va]], 1, &[K(3040.27)], "11XIO"),
    g(&[&[Fe, Ni], &[Va]], 2, &[K(-1469.08)], "11XIO"),
    bm(&[&[Fe, Ni], &[Va]], 0, &[K(1.0177)], "11XIO"),
    bm(&[&[Fe, Ni], &[Va]], 1, &[K(0.5144)], "11XIO"),
    bm(&[&[Fe, Ni], &[Va]], 2, &[K(1.0733)], "11XIO"),
    bm(&[&[Fe, Ni], &[Va]], 3, &[K(1.0314)], "11XIO"),
    tc(&[&[Fe, Ni], &[Va]], 0, &[K(385.8)], "11XIO"),
    g(&[&[Fe, Si], &[C]], 0, &[K(1000000.0), T(-100.0)], "98MIEAA"),
    g(&[&[Fe, Si], &[C]], 1, &[K(-900000.0)], "98MIEAA"),
    g(&[&[Fe, Si], &[Va]], 0, &[K(-154013.56), T(32.29)], "17CUIA"),
    g(&[&[Fe, Si], &[Va]], 1, &[K(-63511.47), T(13.25)], "17CUIA"),
    g(&[&[Fe, Si], &[Va]], 2, &[K(35727.58)], "17CUIA"),
    bm(&[&[Fe, Si], &[Va]], 0, &[K(1.07)], "23WIT"),
    tc(&[&[Fe, Si], &[Va]], 1, &[K(504.0)], "17CUIA"),
    g(&[&[Fe, V], &[C]], 0, &[K(-23674.0), T(0.465)], "91HUA"),
    g(&[&[Fe, V], &[C]], 1, &[K(8283.0)], "91HUA"),
    g(&[&[Fe, V], &[Va]], 0, &[K(-23674.0), T(0.465)], "91HUA"),
    g(&[&[Fe, V], &[Va]], 1, &[K(8283.0)], "91HUA"),
    bm(&[&[Fe, V], &[Va]], 0, &[K(-2.26)], "91HUA"),
    tc(&[&[Fe, V], &[Va]], 0, &[K(-110.0)], "91HUA"),
    tc(&[&[Fe, V], &[Va]], 1, &[K(3075.0)], "91HUA"),
    tc(&[&[Fe, V], &[Va]], 2, &[K(808.0)], "91HUA"),
    tc(&[&[Fe, V], &[Va]], 3, &[K(-2169.0)], "91HUA"),
    g(&[&[Fe, W], &[C]], 0, &[K(-140000.0)], "87GUS"),
    g(&[&[Fe, W], &[Va]], 0, &[K(18713.6), T(10.8)], "15JAC"),
    g(&[&[Fe, W], &[Va]], 1, &[K(-8860.0)], "15JAC"),
    g(&[&[Fe, W], &[Va]], 2, &[K(7494.1)], "15JAC"),
    g(&[&[Mn, Ni], &[Va]], 0, &[K(-3508.42803), T(-23.7885576)], "10LIU"),
    g(&[&[Mn, Mo], &[Va]], 0, &[K(19000.0), T(-0.6)], "17ZHEB"),
    g(&[&[Mn, Mo], &[Va]], 1, &[K(8400.0), T(0.3)], "17ZHEB"),
    g(&[&[Mn, Si], &[Va]], 0, &[K(-80946.85)], "15ZHE"),
    g(&[&[Mn, V], &[C]], 0, &[K(-10000.0)], "91HUA"),
    g(&[&[Mn, V], &[Va]], 0, &[K(-10000.0)], "91HUA"),
    g(&[&[Mo, Ni], &[Va]], 0, &[K(42405.6)], "18YAQ"),
    g(&[&[Mo, Si], &[Va]], 0, &[K(-70899.6)], "89VAH"),
    g(&[&[Mo, V], &[C]], 0, &[K(330000.0)], "02BRA"),
    g(&[&[Mo, V], &[Va]], 0, &[K(19245.0)], "02BRA"),
    g(&[&[Mo, W], &[C]], 0, &[K(2000.0)], "88GUSC"),
    g(&[&[Mo, W], &[Va]], 0, &[K(2000.0)], "88GUSE"),
    g(&[&[Mo], &[C, Va]], 0, &[K(-50000.0)], "96SHI"),
    g(&[&[Ni, Si], &[Va]], 0, &[K(-120000.0)], "23WIT"),
    g(&[&[Ni, V], &[Va]], 0, &[K(-30513.8), T(12.6138)], "98KOR"),
    g(&[&[Ni, W], &[Va]], 0, &[K(82000.0)], "88GUSA"),
    g(&[&[Si, V], &[Va]], 0, &[K(-205373.1), T(61.02211)], "08ZHAA"),
    g(&[&[Si, W], &[Va]], 0, &[K(13667.6)], "89VAH"),
    g(&[&[V, W], &[Va]], 0, &[K(17828.0)], "05BRA"),
    g(&[&[V], &[C, Va]], 0, &[K(-342833.0)], "06HU"),
    g(&[&[Cr, Fe, Mn], &[Va]], 0, &[K(-5996.0)], "93LEEB"),
    g(&[&[Cr, Fe, Ni], &[Va]], 0, &[K(-2673.0), T(2.04145)], "93LEEA"),
    g(&[&[Cr, Fe, Si], &[Va]], 0, &[K(-54000.0)], "97LIN"),
    g(&[&[Cr, Fe, V], &[Va]], 0, &[K(14881.0)], "92LEEC"),
    g(&[&[Cr, Fe, V], &[Va]], 1, &[K(17968.0)], "92LEEC"),
    g(&[&[Cr, Fe, V], &[Va]], 2, &[K(-7692.0)], "92LEEC"),
    g(&[&[Cr, Mn, Ni], &[Va]], 0, &[K(80000.0)], "22DO"),
    g(&[&[Cr, Ni, W], &[Va]], 0, &[K(4102.0)], "88GUSA"),
    g(&[&[Cr, Ni, W], &[Va]], 1, &[K(-122160.0)], "88GUSA"),
    g(&[&[Cr, Ni, W], &[Va]], 2, &[K(4102.0)], "88GUSA"),
    g(&[&[Cr, Mo, Si], &[Va]], 0, &[K(-49000.0)], "23WU"),
    g(&[&[Fe, Mo, Ni], &[Va]], 0, &[K(-35743.0)], "92FRI"),
    g(&[&[Fe, Mo, W], &[Va]], 0, &[K(3000.0)], "88GUSD"),
    g(&[&[Fe, Mn, Si], &[Va]], 0, &[K(-49170.0), T(-73.96)], "17ZHEA"),
    g(&[&[Fe, Ni, Si], &[Va]], 0, &[K(-259000.0), T(924.0), TLnT(-174.0), T2(0.46), T3(-1.74E-4), T7(2.6E-18)], "23WIT"),
    g(&[&[Fe, Ni, Si], &[Va]], 1, &[K(-259000.0), T(924.0), TLnT(-174.0), T2(0.46), T3(-1.74E-4), T7(2.6E-18)], "23WIT"),
    g(&[&[Fe, Ni, Si], &[Va]], 2, &[K(-103000.0), T(1010.0), TLnT(-174.0), T2(0.46), T3(-1.74E-4), T7(2.6E-18)], "23WIT"),
    tc(&[&[Fe, Ni, Si], &[Va]], 0, &[K(5100.0)], "23WIT"),
    tc(&[&[Fe, Ni, Si], &[Va]], 1, &[K(4000.0)], "23WIT"),
    tc(&[&[Fe, Ni, Si], &[Va]], 2, &[K(18200.0)], "23WIT"),
    g(&[&[Fe, Ni, V], &[Va]], 0, &[K(-9635.0), T(-5.0)], "14ZHA"),
    g(&[&[Fe, Ni, V], &[Va]], 1, &[K(-178745.0), T(65.0)], "14ZHA"),
    g(&[&[Fe, Ni, V], &[Va]], 2, &[K(16912.5), T(-12.5)], "14ZHA"),
    g(&[&[Mn, Ni, Si], &[Va]], 0, &[K(-360523.246)], "11HU"),
    g(&[&[Mn, Ni, Si], &[Va]], 1, &[K(-417536.599)], "11HU"),
];

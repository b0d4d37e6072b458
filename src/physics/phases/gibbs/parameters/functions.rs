//! Energy functions that the parameters are made of, J/mol, in an order in which each one
//! refers to earlier ones only.
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

use super::Term::{Inv1, Inv2, Inv3, Inv9, K, Of, T, T2, T3, T4, TLnT};
use super::{Function, Name::*};

/// All functions; [`Name`] as a number is the place in this list.
#[rustfmt::skip]
pub(crate) const FUNCTIONS: &[Function] = &[
    Function { name: GBCCMN, ranges: &[(1519.0, &[K(-3235.3), T(127.85), TLnT(-23.7), T2(-7.44271E-3), Inv1(60000.0)]), (2000.0, &[K(-23188.83), T(307.7043), TLnT(-48.0), Inv9(1265.152E27)])], assessment: "91DIN" },
    Function { name: GHSERNI, ranges: &[(1728.0, &[K(-5179.159), T(117.854), TLnT(-22.096), T2(-4.8407E-3)]), (3000.0, &[K(-27840.620), T(279.134977), TLnT(-43.1), Inv9(1127.54E28)])], assessment: "91DIN" },
    Function { name: GBCCNI, ranges: &[(3000.0, &[K(8715.084), T(-3.556), Of(GHSERNI, 1.0)])], assessment: "91DIN" },
    Function { name: GHSERSI, ranges: &[(1687.0, &[K(-8162.609), T(137.236859), TLnT(-22.8317533), T2(-1.912904E-3), T3(-0.003552E-6), Inv1(176667.0)]), (3600.0, &[K(-9457.642), T(167.281367), TLnT(-27.196), Inv9(-420.369E28)])], assessment: "91DIN" },
    Function { name: GBCCSI, ranges: &[(3600.0, &[K(47000.0), T(-22.5), Of(GHSERSI, 1.0)])], assessment: "91DIN" },
    Function { name: GCR23C6, ranges: &[(6000.0, &[K(-521983.0), T(3622.24), TLnT(-620.965), T2(-0.126431)])], assessment: "92LEEA" },
    Function { name: GHSERCR, ranges: &[(2180.0, &[K(-8856.94), T(157.48), TLnT(-26.908), T2(1.89435E-3), T3(-1.47721E-6), Inv1(139250.0)]), (6000.0, &[K(-34869.344), T(344.18), TLnT(-50.0), Inv9(-2885.26E29)])], assessment: "91DIN" },
    Function { name: GFCCCR, ranges: &[(6000.0, &[K(7284.0), T(0.163), Of(GHSERCR, 1.0)])], assessment: "87ANDA" },
    Function { name: GFCCFE, ranges: &[(1811.0, &[K(-236.7), T(132.416), TLnT(-24.6643), T2(-3.75752E-3), T3(-0.058927E-6), Inv1(77359.0)]), (6000.0, &[K(-27097.3963), T(300.252559), TLnT(-46.0), Inv9(2788.54E28)])], assessment: "91DIN" },
    Function { name: GFCCMN, ranges: &[(1519.0, &[K(-3439.3), T(131.884), TLnT(-24.5177), T2(-6E-3), Inv1(69600.0)]), (2000.0, &[K(-26070.1), T(309.6664), TLnT(-48.0), Inv9(386.196E28)])], assessment: "91DIN" },
    Function { name: GHSERMO, ranges: &[(2896.0, &[K(-7746.302), T(131.9197), TLnT(-23.56414), T2(-3.443396E-3), T3(0.566283E-6), Inv1(65812.0), T4(-0.130927E-9)]), (5000.0, &[K(-30556.41), T(283.559746), TLnT(-42.63829), Inv9(-4849.315E30)])], assessment: "91DIN" },
    Function { name: GFCCMO, ranges: &[(5000.0, &[K(15200.0), T(0.63), Of(GHSERMO, 1.0)])], assessment: "91DIN" },
    Function { name: GFCCSI, ranges: &[(3600.0, &[K(51000.0), T(-21.8), Of(GHSERSI, 1.0)])], assessment: "91DIN" },
    Function { name: GHSERV, ranges: &[(790.0, &[K(-7930.43), T(133.346053), TLnT(-24.134), T2(-3.098E-3), T3(0.12175E-6), Inv1(69460.0)]), (2183.0, &[K(-7967.842), T(143.291093), TLnT(-25.9), T2(0.0625E-3), T3(-0.68E-6)]), (4000.0, &[K(-41689.864), T(321.140783), TLnT(-47.43), Inv9(644.389E29)])], assessment: "91DIN" },
    Function { name: GFCCVV, ranges: &[(6000.0, &[K(7500.0), T(1.7), Of(GHSERV, 1.0)])], assessment: "91DIN" },
    Function { name: GHSERW, ranges: &[(3695.0, &[K(-7646.311), T(130.4), TLnT(-24.1), T2(-1.936E-3), T3(0.207E-6), Inv1(44500.0), T4(-0.0533E-9)]), (6000.0, &[K(-82868.801), T(389.362335), TLnT(-54.0), Inv9(1528.621E30)])], assessment: "91DIN" },
    Function { name: GFCCW, ranges: &[(6000.0, &[K(19300.0), T(0.63), Of(GHSERW, 1.0)])], assessment: "91DIN" },
    Function { name: GFE3C, ranges: &[(6000.0, &[K(-10195.860754), T(690.949887637), TLnT(-118.47637), T2(-0.0007), Inv1(590527.0)])], assessment: "10HAL" },
    Function { name: GHSERCC, ranges: &[(6000.0, &[K(-17368.441), T(170.73), TLnT(-24.3), T2(-0.4723E-3), Inv1(2562600.0), Inv2(-264300000.0), Inv3(1.2E10)])], assessment: "91DIN" },
    Function { name: GFE23C6, ranges: &[(6000.0, &[K(15000.0), Of(GFE3C, 7.666667), Of(GHSERCC, -1.666667)])], assessment: "11DJU" },
    Function { name: GHSERFE, ranges: &[(1811.0, &[K(1225.7), T(124.134), TLnT(-23.5143), T2(-4.39752E-3), T3(-0.058927E-6), Inv1(77359.0)]), (6000.0, &[K(-25383.581), T(299.31255), TLnT(-46.0), Inv9(2296.03E28)])], assessment: "91DIN" },
    Function { name: GHSERMN, ranges: &[(1519.0, &[K(-8115.28), T(130.059), TLnT(-23.4582), T2(-7.34768E-3), Inv1(69827.0)]), (2000.0, &[K(-28733.41), T(312.2648), TLnT(-48.0), Inv9(1656.847E27)])], assessment: "91DIN" },
    Function { name: GMN23C6, ranges: &[(6000.0, &[K(-310473.0), T(53.86), Of(GHSERMN, 23.0), Of(GHSERCC, 6.0)])], assessment: "10DJU" },
    Function { name: GNI23C6, ranges: &[(6000.0, &[K(210000.0), T(-84.71), Of(GHSERNI, 23.0), Of(GHSERCC, 6.0)])], assessment: "92LEEA" },
    Function { name: GV23C6, ranges: &[(6000.0, &[K(-990367.0), T(4330.63), TLnT(-728.829), Inv1(5.003425E6)])], assessment: "91HUA" },
    Function { name: LDF0MNNI, ranges: &[(6000.0, &[K(-20455.7462), T(-11.7930695)])], assessment: "10LIU" },
    Function { name: LDF1MNNI, ranges: &[(6000.0, &[K(15581.5125), T(-8.49116947)])], assessment: "10LIU" },
];

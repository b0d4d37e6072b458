//! Parameters of the face-centred phase: austenite, and MC when its carbon sites are filled.
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
    GFCCCR, GFCCFE, GFCCMN, GFCCMO, GFCCSI, GFCCVV, GFCCW, GHSERCC, GHSERMN, GHSERMO, GHSERNI,
    GHSERSI, GHSERW, LDF0MNNI, LDF1MNNI,
};
use super::Term::{Inv1, K, Of, T, T2, T3, TLnT};
use super::{Parameter, bm, g, tc};

/// Austenite and MC, (Cr,Fe,Mn,Mo,Ni,Si,V,W)1(C,Va)1.
#[rustfmt::skip]
pub(crate) const FCC_A1: &[Parameter] = &[
    g(&[&[Cr], &[C]], 0, &[K(-620.0), T(314.34), TLnT(-51.3385), T2(-6.57E-4), T3(-3.412E-7)], "22HAG"),
    bm(&[&[Cr], &[C]], 0, &[K(1.317)], "22HAG"),
    tc(&[&[Cr], &[C]], 0, &[K(249.0)], "22HAG"),
    g(&[&[Cr], &[Va]], 0, &[Of(GFCCCR, 1.0)], "87ANDA"),
    tc(&[&[Cr], &[Va]], 0, &[K(-1109.0)], "91DIN"),
    bm(&[&[Cr], &[Va]], 0, &[K(-2.46)], "91DIN"),
    g(&[&[Fe], &[C]], 0, &[K(77207.0), T(-15.877), Of(GFCCFE, 1.0), Of(GHSERCC, 1.0)], "85GUS"),
    bm(&[&[Fe], &[C]], 0, &[K(-2.1)], "85GUS"),
    tc(&[&[Fe], &[C]], 0, &[K(-201.0)], "85GUS"),
    g(&[&[Fe], &[Va]], 0, &[Of(GFCCFE, 1.0)], "91DIN"),
    bm(&[&[Fe], &[Va]], 0, &[K(-2.1)], "85GUS"),
    tc(&[&[Fe], &[Va]], 0, &[K(-201.0)], "85GUS"),
    g(&[&[Mn], &[C]], 0, &[T(13.659), Of(GHSERMN, 1.0), Of(GHSERCC, 1.0)], "10DJU"),
    g(&[&[Mn], &[Va]], 0, &[Of(GFCCMN, 1.0)], "05GUO"),
    bm(&[&[Mn], &[Va]], 0, &[K(-1.86)], "91DIN"),
    tc(&[&[Mn], &[Va]], 0, &[K(-1620.0)], "91DIN"),
    g(&[&[Mo], &[C]], 0, &[K(-7500.0), T(-8.3), Inv1(-750000.0), Of(GHSERMO, 1.0), Of(GHSERCC, 1.0)], "88ANDC"),
    g(&[&[Mo], &[Va]], 0, &[Of(GFCCMO, 1.0)], "91DIN"),
    g(&[&[Ni], &[C]], 0, &[K(62000.0), T(-7.6), Of(GHSERNI, 1.0), Of(GHSERCC, 1.0)], "92LEEA"),
    g(&[&[Ni], &[Va]], 0, &[Of(GHSERNI, 1.0)], "05GUO"),
    bm(&[&[Ni], &[C]], 0, &[K(0.52)], "92LEEA"),
    bm(&[&[Ni], &[Va]], 0, &[K(0.62)], "11XIO"),
    tc(&[&[Ni], &[C]], 0, &[K(633.0)], "92LEEA"),
    tc(&[&[Ni], &[Va]], 0, &[K(633.0)], "11XIO"),
    g(&[&[Si], &[C]], 0, &[K(-20510.0), T(38.7), Of(GHSERSI, 1.0), Of(GHSERCC, 1.0)], "91LAC"),
    g(&[&[Si], &[Va]], 0, &[Of(GFCCSI, 1.0)], "91DIN"),
    g(&[&[V], &[C]], 0, &[K(-115096.0), T(259.044), TLnT(-41.756), T2(-5.57101E-3), Inv1(590546.0)], "06HU"),
    g(&[&[V], &[Va]], 0, &[Of(GFCCVV, 1.0)], "91DIN"),
    g(&[&[W], &[C]], 0, &[K(-17864.0), T(1.875), Of(GHSERW, 1.0), Of(GHSERCC, 1.0)], "87GUS"),
    g(&[&[W], &[Va]], 0, &[Of(GFCCW, 1.0)], "91DIN"),
    g(&[&[Cr], &[C, Va]], 0, &[K(-11977.0), T(6.8194)], "92LEEA"),
    g(&[&[Cr, Fe], &[C]], 0, &[K(-69534.0), T(3.2353)], "14KHV"),
    g(&[&[Cr, Fe], &[Va]], 0, &[K(28767.0), T(-21.0)], "17JAC"),
    g(&[&[Cr, Fe], &[Va]], 1, &[K(33057.0), T(-20.7)], "17JAC"),
    g(&[&[Cr, Mn], &[C]], 0, &[K(-19088.0), T(17.5423)], "93LEEC"),
    g(&[&[Cr, Mn], &[Va]], 0, &[K(-19088.0), T(17.5423)], "93LEEB"),
    g(&[&[Cr, Mo], &[C]], 0, &[K(-65469.0), T(51.4)], "05BRA"),
    g(&[&[Cr, Mo], &[Va]], 0, &[K(28890.0), T(-7.962)], "92QIU"),
    g(&[&[Cr, Mo], &[Va]], 1, &[K(5974.0), T(-2.428)], "92QIU"),
    g(&[&[Cr, Ni], &[C]], 0, &[K(-125935.0), T(95.0)], "92LEEA"),
    g(&[&[Cr, Ni], &[Va]], 0, &[K(4300.0), T(-8.9)], "16TAN"),
    g(&[&[Cr, Ni], &[Va]], 1, &[K(27000.0), T(-13.8)], "16TAN"),
    bm(&[&[Cr, Ni], &[Va]], 0, &[K(-1.91)], "88GUSA"),
    tc(&[&[Cr, Ni], &[Va]], 0, &[K(-3605.0)], "88GUSA"),
    g(&[&[Cr, Si], &[Va]], 0, &[K(-77309.9324), T(-2.38320)], "FIX1"),
    g(&[&[Cr, Si], &[Va]], 1, &[K(-53247.5616), T(13.58981)], "FIX1"),
    g(&[&[Cr, V], &[C]], 0, &[K(35698.0), T(-50.0981)], "92LEEB"),
    g(&[&[Cr, V], &[Va]], 0, &[K(-9874.0), T(-2.6964)], "92LEEC"),
    g(&[&[Cr, V], &[Va]], 1, &[K(-1720.0), T(-2.5237)], "92LEEC"),
    g(&[&[Cr, W], &[Va]], 0, &[K(31520.0)], "88GUSA"),
    g(&[&[Cr, W], &[Va]], 1, &[K(-1320.0)], "88GUSA"),
    g(&[&[Fe], &[C, Va]], 0, &[K(-34671.0)], "85GUS"),
    g(&[&[Fe, Mn], &[C]], 0, &[K(20082.0), T(-11.6312)], "11DJU"),
    g(&[&[Fe, Mn], &[Va]], 0, &[K(-7762.0), T(3.865)], "89HUAA"),
    g(&[&[Fe, Mn], &[Va]], 1, &[K(-259.0)], "89HUAA"),
    tc(&[&[Fe, Mn], &[Va]], 0, &[K(-2282.0)], "89HUAA"),
    tc(&[&[Fe, Mn], &[Va]], 1, &[K(-2068.0)], "89HUAA"),
    g(&[&[Fe, Mo], &[C]], 0, &[K(6000.0)], "88ANDD"),
    g(&[&[Fe, Mo], &[Va]], 0, &[K(20978.0), T(-11.843)], "14RAJ"),
    g(&[&[Fe, Ni], &[C]], 0, &[K(50035.5), T(-15.89)], "23JAC"),
    g(&[&[Fe, Ni], &[C]], 1, &[K(-32969.9)], "23JAC"),
    tc(&[&[Fe, Ni], &[C]], 0, &[K(6000.0)], "23JAC"),
    tc(&[&[Fe, Ni], &[C]], 1, &[K(1000.0)], "23JAC"),
    g(&[&[Fe, Ni], &[Va]], 0, &[K(-15690.3), T(2.36733)], "11XIO"),
    g(&[&[Fe, Ni], &[Va]], 1, &[K(7781.85)], "11XIO"),
    g(&[&[Fe, Ni], &[Va]], 2, &[K(-1649.56)], "11XIO"),
    bm(&[&[Fe, Ni], &[Va]], 0, &[K(10.186)], "11XIO"),
    bm(&[&[Fe, Ni], &[Va]], 1, &[K(8.834)], "11XIO"),
    bm(&[&[Fe, Ni], &[Va]], 2, &[K(-4.006)], "11XIO"),
    bm(&[&[Fe, Ni], &[Va]], 3, &[K(-24.828)], "11XIO"),
    bm(&[&[Fe, Ni], &[Va]], 4, &[K(-18.686)], "11XIO"),
    tc(&[&[Fe, Ni], &[Va]], 0, &[K(2295.6)], "11XIO"),
    tc(&[&[Fe, Ni], &[Va]], 1, &[K(-448.8)], "11XIO"),
    tc(&[&[Fe, Ni], &[Va]], 2, &[K(-1186.0)], "11XIO"),
    tc(&[&[Fe, Ni], &[Va]], 3, &[K(-4367.6)], "11XIO"),
    tc(&[&[Fe, Ni], &[Va]], 4, &[K(-8658.1)], "11XIO"),
    tc(&[&[Fe, Ni], &[Va]], 5, &[K(-5671.0)], "11XIO"),
    g(&[&[Fe, Si], &[C]], 0, &[K(226100.0), T(-34.25)], "98MIEA"),
    g(&[&[Fe, Si], &[C]], 1, &[K(-202400.0)], "98MIEA"),
    g(&[&[Fe, Si], &[Va]], 0, &[K(-115254.05), T(-2.19)], "17CUIA"),
    g(&[&[Fe, Si], &[Va]], 1, &[K(-84776.91), T(44.33)], "17CUIA"),
    g(&[&[Fe, Si], &[Va]], 2, &[K(20007.03)], "17CUIA"),
    g(&[&[Fe, V], &[C]], 0, &[K(-7645.5), T(-2.069)], "91HUA"),
    g(&[&[Fe, V], &[C]], 1, &[K(-7645.5), T(-2.069)], "91HUA"),
    g(&[&[Fe, V], &[Va]], 0, &[K(-15291.0), T(-4.138)], "91HUA"),
    g(&[&[Fe, W], &[C]], 0, &[K(-116756.0), T(100.0)], "87GUS"),
    g(&[&[Fe, W], &[Va]], 0, &[K(10944.5), T(5.0)], "15JAC"),
    g(&[&[Mn], &[C, Va]], 0, &[K(-41333.0)], "10DJU"),
    g(&[&[Mn, Mo], &[Va]], 0, &[K(11174.0)], "17ZHEB"),
    g(&[&[Mn, Ni], &[Va]], 0, &[Of(LDF0MNNI, 1.0)], "10LIU"),
    g(&[&[Mn, Ni], &[Va]], 1, &[Of(LDF1MNNI, 1.0)], "10LIU"),
    bm(&[&[Mn, Ni], &[Va]], 0, &[K(-1.3947)], "05GUO"),
    tc(&[&[Mn, Ni], &[Va]], 0, &[K(-3171.20)], "05GUO"),
    tc(&[&[Mn, Ni], &[Va]], 1, &[K(-4317.73)], "05GUO"),
    g(&[&[Mn, Si], &[Va]], 0, &[K(-101155.80)], "15ZHE"),
    g(&[&[Mn, V], &[Va]], 0, &[K(-11820.0)], "91HUA"),
    g(&[&[Mo, Ni], &[Va]], 0, &[K(-3606.8)], "18YAQ"),
    g(&[&[Mo, Ni], &[Va]], 1, &[K(18911.0)], "18YAQ"),
    g(&[&[Mo, W], &[Va]], 0, &[K(2000.0)], "88GUSE"),
    g(&[&[Mo], &[C, Va]], 0, &[K(-41300.0)], "88ANDC"),
    g(&[&[Ni], &[C, Va]], 0, &[K(-17661.0), T(10.27)], "22OIK"),
    g(&[&[Ni, Si], &[Va]], 0, &[K(-95699.9), T(-33.365)], "23WIT"),
    g(&[&[Ni, Si], &[Va]], 1, &[K(-199095.4), T(5.766)], "23WIT"),
    g(&[&[Ni, Si], &[Va]], 2, &[K(-29213.4), T(49.998)], "23WIT"),
    tc(&[&[Ni, Si], &[Va]], 0, &[K(-3872.0)], "23WIT"),
    g(&[&[Ni, V], &[Va]], 0, &[K(-36365.6), T(3.75677)], "98KOR"),
    g(&[&[Ni, V], &[Va]], 1, &[K(11860.7), T(-9.0302)], "98KOR"),
    g(&[&[Ni, V], &[Va]], 2, &[K(-10647.5), T(7.00954)], "98KOR"),
    g(&[&[Ni, W], &[Va]], 0, &[K(2556.0), T(11.6)], "88GUSA"),
    g(&[&[Ni, W], &[Va]], 1, &[K(-52900.0)], "88GUSA"),
    g(&[&[V, W], &[C]], 0, &[K(-28973.0), T(13.3)], "05BRA"),
    g(&[&[V], &[C, Va]], 0, &[K(-54989.0), T(-6.920)], "06HU"),
    g(&[&[V], &[C, Va]], 1, &[K(-58754.0)], "06HU"),
    g(&[&[W], &[C, Va]], 0, &[T(-17.98)], "87GUS"),
    g(&[&[Cr, Fe, Mn], &[Va]], 0, &[K(6715.0), T(-10.3933)], "93LEEB"),
    g(&[&[Cr, Fe, Ni], &[C]], 0, &[K(-8515.0)], "91HIL"),
    g(&[&[Cr, Fe, Ni], &[Va]], 0, &[K(16580.0), T(-9.7835)], "93LEEA"),
    tc(&[&[Cr, Fe, Ni], &[Va]], 1, &[K(10199.2)], "21XIA"),
    tc(&[&[Cr, Fe, Ni], &[Va]], 2, &[K(-2253.8)], "21XIA"),
    g(&[&[Cr, Fe, Si], &[Va]], 0, &[K(-54000.0)], "98MIEC"),
    g(&[&[Cr, Mn, Ni], &[Va]], 0, &[K(50000.0)], "22DO"),
    g(&[&[Cr, Mo, V], &[C]], 0, &[K(297033.0), T(-233.0)], "05BRA"),
    g(&[&[Cr, Ni, W], &[Va]], 0, &[K(23006.0)], "88GUSA"),
    g(&[&[Fe, Mn, Mo], &[Va]], 0, &[K(32000.0)], "17ZHEB"),
    g(&[&[Fe, Mn, Mo], &[Va]], 2, &[K(-180000.0)], "17ZHEB"),
    g(&[&[Fe, Mn, Si], &[Va]], 0, &[K(-53347.0), T(-67.55)], "17ZHEA"),
    tc(&[&[Fe, Mn, Si], &[Va]], 0, &[K(13854.0)], "93FOR"),
    g(&[&[Fe, Mo, Ni], &[Va]], 0, &[K(-204791.0), T(163.93)], "92FRI"),
    g(&[&[Fe, Mo, Ni], &[Va]], 1, &[K(11555.0), T(-55.81)], "92FRI"),
    g(&[&[Fe, Mo, Ni], &[Va]], 2, &[K(77975.0)], "92FRI"),
    g(&[&[Fe, Ni, Si], &[Va]], 0, &[K(-347000.0), T(75.0)], "23WIT"),
    g(&[&[Fe, Ni, Si], &[Va]], 1, &[K(-115000.0)], "23WIT"),
    g(&[&[Fe, Ni, Si], &[Va]], 2, &[K(-180000.0)], "23WIT"),
    g(&[&[Fe, Ni, V], &[Va]], 0, &[K(-80920.0), T(40.0)], "14ZHA"),
    g(&[&[Fe, Ni, V], &[Va]], 1, &[K(-70920.0), T(40.0)], "14ZHA"),
    g(&[&[Fe, Ni, V], &[Va]], 2, &[K(-85920.0), T(40.0)], "14ZHA"),
    g(&[&[Fe, Ni, W], &[Va]], 0, &[K(-35044.0)], "86GUI"),
    g(&[&[Fe, Ni, W], &[Va]], 1, &[K(50436.0)], "86GUI"),
    g(&[&[Fe, V], &[C, Va]], 0, &[K(-40000.0)], "91HUA"),
    g(&[&[Mn, Ni, Si], &[Va]], 0, &[K(-279173.878)], "11HU"),
    g(&[&[Mn, Ni, Si], &[Va]], 1, &[K(5888.419)], "11HU"),
];

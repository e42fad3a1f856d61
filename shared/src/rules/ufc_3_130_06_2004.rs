//! UFC 3-130-06, Calculation methods for determination of depths of freeze and thaw in soils, 2004; formerly TM 5-852-6.

pub mod berggren;
pub mod stefan;

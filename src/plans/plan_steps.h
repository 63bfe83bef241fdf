#pragma once
// What a plan itself asks for: the work of the change, and what is bought for it, among what the changed build asks
// for.
#include "plans/mounting.h"
#include "plans/plan.h"
#include "plans/shopping.h"

#include <vector>

namespace baywright::plans {

/// `mounting` and `items` are those of the build with the plan made. Steps come behind what has to be out of the way,
/// before the drive is dressed; where there are no steps none are added.
void add_work(const Plan& plan, Mounting& mounting);
/// A stand-off that the plan puts in is bought, though the changed build says that it has one.
void add_work(const Plan& plan, std::vector<Item>& items);

}  // namespace baywright::plans

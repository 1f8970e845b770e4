"""Planning a week from a brief: the only door to the search."""

from setwright.solver.planning.delivery import AuditFailed, check, delivered
from setwright.solver.planning.ends import Clash, End, OutOfTime, Solved
from setwright.solver.planning.from_weeks import Reoptimised, Unsolved, best_and_nearest, reoptimise, search_only
from setwright.solver.planning.planner import plan, plan_apart, plan_near
from setwright.solver.planning.rest_of_week import plan_rest
from setwright.solver.planning.so_far import best_so_far
from setwright.solver.search.feasibility import Possible, first_week, possible
from setwright.solver.search.secondary.rest_of_week import RestOfWeek
from setwright.solver.search.secondary.standing_week import StandingWeek

__all__ = [
    "AuditFailed",
    "Clash",
    "End",
    "OutOfTime",
    "Possible",
    "Reoptimised",
    "RestOfWeek",
    "Solved",
    "StandingWeek",
    "Unsolved",
    "best_and_nearest",
    "best_so_far",
    "check",
    "delivered",
    "first_week",
    "plan",
    "plan_apart",
    "plan_near",
    "plan_rest",
    "possible",
    "reoptimise",
    "search_only",
]

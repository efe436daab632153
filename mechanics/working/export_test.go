package working

// RouteSteps are for the tests, which print them.
var RouteSteps = routeSteps

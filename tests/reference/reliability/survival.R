# Rscript survival.R LIVES.csv   the second opinion on lives of parts.
#
# LIVES.csv has a line a part: sample,ending,age,until,entered (endings as in weibull_fit.hpp).
# Prints, one a line, with 17 digits:
#   record NAME age age ...                                   of package boot: all of them failures
#   fit NAME weibull|exponential CONVERGED shape scale ln-likelihood
#   step NAME age at-risk failed survival deviation hazard-sum  where every age is known
# survreg knows no left truncation: there the likelihood is written out below and given to optim.
suppressPackageStartupMessages(library(survival))

line <- function(...) {
  words <- sapply(list(...), function(x)
    if (is.numeric(x)) formatC(x, digits = 17, format = "g", width = 1) else x)
  cat(words, "\n")
}

log_likelihood <- function(d, ln_scale, ln_shape) {
  load <- function(t) exp(exp(ln_shape) * (log(t) - ln_scale))
  w <- load(d$age)
  terms <- ifelse(d$ending == "failed",
                  ln_shape + exp(ln_shape) * (log(d$age) - ln_scale) - log(d$age) - w,
           ifelse(d$ending == "running", -w,
           ifelse(d$ending == "failed_before", log(-expm1(-w)),
                  -w + log(-expm1(w - load(pmax(d$until, d$age)))))))
  sum(terms + ifelse(d$entered > 0, load(pmax(d$entered, 1e-300)), 0))
}

by_survreg <- function(d, law) {
  low <- ifelse(d$ending == "failed_before", NA, d$age)
  high <- ifelse(d$ending == "running", NA, ifelse(d$ending == "failed_between", d$until, d$age))
  warned <- FALSE
  fit <- tryCatch(withCallingHandlers(
    survreg(Surv(low, high, type = "interval2") ~ 1, dist = law,
            control = survreg.control(rel.tolerance = 1e-12, maxiter = 200)),
    warning = function(w) { warned <<- TRUE; invokeRestart("muffleWarning") }),
    error = function(e) NULL)
  if (is.null(fit)) return(c(0, 1, 1, -Inf))
  # survreg may run away and call that converged: its figure must be that of the likelihood there.
  there <- log_likelihood(d, coef(fit)[[1]], -log(fit$scale))
  sound <- is.finite(there) && abs(there - fit$loglik[[1]]) <= 1e-9 * (1 + abs(there))
  c(!warned && fit$iter < 200 && sound, 1 / fit$scale, exp(coef(fit)[[1]]),
    if (sound) fit$loglik[[1]] else -Inf)
}

by_optim <- function(d, law) {
  middle <- log(mean(d$age))
  if (law == "exponential") {
    best <- optimize(function(a) -log_likelihood(d, a, 0), middle + c(-5, 10), tol = 1e-13)
    return(c(1, 1, exp(best$minimum), -best$objective))
  }
  lost <- function(p) {
    value <- -log_likelihood(d, p[1], p[2])
    if (is.finite(value)) value else 1e100
  }
  best <- NULL
  for (shape in c(.5, 1, 2, 4)) {
    at <- c(middle, log(shape))
    for (again in 1:3) {  # a simplex may stop early: begin anew where it stopped
      found <- optim(at, lost, control = list(reltol = 1e-15, maxit = 5000))
      at <- found$par
    }
    if (is.null(best) || found$value < best$value) best <- found
  }
  c(best$convergence == 0, exp(best$par[2]), exp(best$par[1]), -best$value)
}

report <- function(name, d) {
  for (law in c("weibull", "exponential")) {
    fit <- if (any(d$entered > 0)) by_optim(d, law) else by_survreg(d, law)
    line("fit", name, law, fit[1], fit[2], fit[3], fit[4])
  }
  if (!all(d$ending %in% c("failed", "running"))) return(invisible())
  curve <- survfit(Surv(d$entered, d$age, d$ending == "failed") ~ 1)
  for (i in which(curve$n.event > 0)) {
    deviation <- if (curve$surv[i] > 0) curve$surv[i] * curve$std.err[i] else 0
    line("step", name, curve$time[i], curve$n.risk[i], curve$n.event[i], curve$surv[i], deviation,
         curve$cumhaz[i])
  }
}

lives <- read.csv(commandArgs(trailingOnly = TRUE)[1], stringsAsFactors = FALSE)
for (name in unique(lives$sample)) report(name, lives[lives$sample == name, ])
for (name in c("aircondit", "aircondit7")) {
  hours <- getExportedValue("boot", name)$hours
  cat("record", name, hours, "\n")
  report(name, data.frame(ending = "failed", age = hours, until = 0, entered = 0))
}

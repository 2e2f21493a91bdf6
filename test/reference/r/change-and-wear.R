# Values for test/reference/checks/wear.ts, from R's own functions. Run: Rscript change-and-wear.R > change-and-wear.txt
cat(R.version.string, "\n", sep = "")
show <- function(name, ...) cat(name, " ", paste(trimws(formatC(c(...), digits = 15, format = "g")), collapse = " "), "\n", sep = "")

# Lines: slope with its interval by confint; where the line meets a level by the band of predict(interval = "confidence").
meets <- function(model, level, x) {
  line <- coef(model)
  at <- unname((level - line[1]) / line[2])
  band <- function(bound) function(x) predict(model, data.frame(x = x), interval = "confidence")[, bound] - level
  root <- function(bound, from, to) uniroot(band(bound), c(from, to), tol = 1e-12)$root
  ends <- sort(c(root("upr", at - x, at + x), root("lwr", at - x, at + x)))
  c(at, ends)
}
hours <- seq(2, 28, 2)
grams <- c(0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57, 8.4, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04)
degrees <- seq(96, 110, 2)
reads <- c(95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21)
use <- c(0, 100, 250, 400, 600)
wear <- c(0, 0.02, 0.024, 0.03, 0.035)
show("crystals", meets(lm(grams ~ x, data.frame(x = hours)), 8, 8))
show("thermometer", meets(lm(reads ~ x, data.frame(x = degrees)), 104, 5))
show("wear-rate", coef(lm(wear ~ use))[2], confint(lm(wear ~ use))[2, ])
show("wear-life", meets(lm(wear ~ x, data.frame(x = use)), 0.05, 4700)[1])

# The same with the standard deviation known, by the normal law: a line whose points have the known variance as weights.
known <- function(x, y, u, level) {
  model <- lm(y ~ x)
  unscaled <- summary(model)$cov.unscaled
  z <- qnorm(0.975)
  line <- coef(model)
  sd <- function(at) u * sqrt(sapply(at, function(a) c(1, a) %*% unscaled %*% c(1, a)))
  at <- unname((level - line[1]) / line[2])
  low <- uniroot(function(a) line[1] + line[2] * a + z * sd(a) - level, c(at / 4, at), tol = 1e-11)$root
  high <- uniroot(function(a) line[1] + line[2] * a - z * sd(a) - level, c(at, at * 4), tol = 1e-11)$root
  list(rate = c(line[2], line[2] + c(-1, 1) * z * u * sqrt(unscaled[2, 2])), life = c(at, low, high))
}
bores <- known(c(0, 500, 1000, 1500), c(73, 73.011, 73.019, 73.031), 0.002, 73.1)
show("known-rate", bores$rate)
show("known-life", bores$life)

# Pairs and groups.
before <- c(73.012, 73.01, 73.015, 73.011, 73.013, 73.012)
after <- c(73.021, 73.026, 73.024, 73.018, 73.031, 73.022)
paired <- t.test(after, before, paired = TRUE)
show("paired", paired$estimate, paired$conf.int, paired$statistic, paired$parameter, paired$p.value)
show("paired-99", t.test(after, before, paired = TRUE, conf.level = 0.99)$conf.int)
show("paired-90", t.test(after, before, paired = TRUE, conf.level = 0.9)$conf.int)
show("welch", t.test(after, before)$p.value)
sleepers <- with(sleep, list(a = extra[group == 1], b = extra[group == 2]))
asleep <- t.test(sleepers$b, sleepers$a, paired = TRUE)
show("sleep-a", sleepers$a)
show("sleep-b", sleepers$b)
show("sleep", asleep$estimate, asleep$conf.int, asleep$statistic, asleep$parameter, asleep$p.value)

# Quantiles and chances of both laws.
show("qnorm", qnorm(c(0.9, 0.95, 0.975, 0.995)))
show("qt", qt(0.975, c(1, 2, 3.5, 10)))
show("pnorm", 2 * pnorm(-c(0.5, 1.959963984540054, 3, 8)))
show("pt", 2 * pt(-c(0.5, 2, 3, 8), 3.5))

# Power of the paired t test for a change of one and a half standard deviations of a change, 2, 3, 4 and 8 pairs.
power <- function(n) power.t.test(n, delta = 1.5, sd = 1, type = "paired", strict = TRUE)$power
show("power-paired-t", sapply(c(2, 3, 4, 8), power))

# Power of the two-sample t test for one, two and three standard deviations, by engines in each group, and how many reach 80 and 90 %.
two <- function(n, delta) power.t.test(n, delta = delta, sd = 1, type = "two.sample", strict = TRUE)$power
show("power-two-t-1", sapply(c(2, 10, 22, 23), two, delta = 1))
show("power-two-t-2", sapply(c(2, 6, 7), two, delta = 2))
show("power-two-t-3", sapply(c(2, 3, 4), two, delta = 3))
needed <- function(delta, power, level = 0.05) {
  n <- 2
  while (power.t.test(n, delta = delta, sd = 1, sig.level = level, strict = TRUE)$power < power) n <- n + 1
  n
}
deltas <- c(0.5, 1, 1.5, 2, 3, 4, 6)
show("engines-deltas", deltas)
show("engines-90", sapply(deltas, needed, power = 0.9))
show("engines-80", sapply(deltas, needed, power = 0.8))
show("engines-90-99", sapply(deltas, needed, power = 0.9, level = 0.01))

# Smallest change of a mean of n pairs that the paired t test sees nine times in ten, in standard deviations of a change.
show("seen-paired-t", sapply(c(3, 6, 12), function(n) uniroot(function(delta) power.t.test(n, delta = delta, sd = 1, type = "paired", strict = TRUE)$power - 0.9, c(0.1, 20), tol = 1e-12)$root))

# Quantiles of one place's plan: z of 1 - 0.025/rows for 1, 4, 64 rows, and of the power.
show("z-rows", qnorm(1 - 0.025 / c(1, 4, 64)))
show("z-power", qnorm(c(0.8, 0.9)))

# Chances adjusted by Holm.
chances <- c(0.01, 0.04, 0.03, 0.005, 0.2, 0.0004, 0.04, 0.9)
show("chances", chances)
show("holm", p.adjust(chances, "holm"))

# The same two groups by Welch, six engines' mean changes on one side and eight on the other.
one <- c(5.1, 2, 4.1, 6.2, 7.1, 8.3)
other <- c(1.5, 6.4, 3.3, 5.8, 4.8, 7.2, 5.6, 4.5)
groups <- t.test(one, other)
show("groups", groups$estimate[1] - groups$estimate[2], groups$conf.int, groups$statistic, groups$parameter, groups$p.value)

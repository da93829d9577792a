# What R says of its classic trials: first each table as CSV between "#data NAME" and "#end",
# then lines of a name and a number.
suppressPackageStartupMessages(library(multcomp))
tell <- function(name, value) cat(name, sprintf("%.15g", value), "\n")
table <- function(name, data) {
  cat("#data", name, "\n")
  write.csv(data, row.names = FALSE, quote = FALSE)
  cat("#end\n")
}

d <- PlantGrowth
names(d) <- c("weight", "treatment")
table("PlantGrowth", d[, c("treatment", "weight")])
welch <- t.test(d$weight[d$treatment == "trt2"], d$weight[d$treatment == "ctrl"])
tell("welch.t", welch$statistic)
tell("welch.df", welch$parameter)
tell("welch.p", welch$p.value)
tell("welch.low", welch$conf.int[1])
tell("welch.high", welch$conf.int[2])
fit <- aov(weight ~ treatment, d)
fit.plants <- fit
tell("anova.f", summary(fit)[[1]][1, 4])
tell("anova.p", summary(fit)[[1]][1, 5])
tell("anova.error", summary(fit)[[1]][2, 3])
pairs <- TukeyHSD(fit)$treatment
for (row in rownames(pairs)) {
  for (at in 2:4) tell(paste0("tukey.", row, ".", colnames(pairs)[at]), pairs[row, at])
}
set.seed(1)
many <- summary(glht(fit, linfct = mcp(treatment = "Dunnett")))
tell("dunnett.trt1", many$test$pvalues[1])
tell("dunnett.trt2", many$test$pvalues[2])
tell("ranks", wilcox.test(d$weight[d$treatment == "trt2"], d$weight[d$treatment == "ctrl"], exact = TRUE)$p.value)

table("michelso", data.frame(speed = 299 + morley$Speed / 1000))

s <- data.frame(treatment = sleep$group, pair = sleep$ID, sleep = sleep$extra)
table("sleep", s)
paired <- t.test(sleep$extra[sleep$group == 2], sleep$extra[sleep$group == 1], paired = TRUE)
tell("sleep.t", paired$statistic)
tell("sleep.p", paired$p.value)
tell("sleep.low", paired$conf.int[1])
tell("sleep.high", paired$conf.int[2])

n <- data.frame(plot = 1:24, block = npk$block, treatment = npk$N, yield = npk$yield)
table("npk", n)
of <- summary(aov(yield ~ block + factor(treatment), n))[[1]]
tell("npk.f", of[2, 4])
tell("npk.p", of[2, 5])
tell("npk.error", of[3, 3])

i <- data.frame(block = MASS::immer$Loc, treatment = MASS::immer$Var, yield = (MASS::immer$Y1 + MASS::immer$Y2) / 2)
table("immer", i)
of <- summary(aov(yield ~ block + treatment, i))[[1]]
tell("immer.f", of[2, 4])
tell("immer.p", of[2, 5])
tell("immer.error", of[3, 3])
# With plots lost: least squares.
lost <- i[-c(2, 9, 20), ]
table("lost", lost)
fit <- lm(yield ~ block + treatment, lost)
tell("lost.f", anova(fit)[2, 4])
tell("lost.error", anova(fit)[3, 3])
for (row in rownames(coef(summary(fit)))) {
  if (startsWith(row, "treatment")) {
    tell(paste0("lost.", row), coef(summary(fit))[row, 1])
    tell(paste0("lost.se.", row), coef(summary(fit))[row, 2])
  }
}

table("oats", data.frame(block = MASS::oats$B, variety = MASS::oats$V, treatment = MASS::oats$N, yield = MASS::oats$Y))

tell("signed", wilcox.test(boot::darwin$y, exact = TRUE)$p.value)
table("darwin", data.frame(difference = boot::darwin$y))
p <- c(0.01, 0.02, 0.03, 0.04, 0.05, 0.004, 0.2, 0.011)
cat("holm", sprintf("%.15g", p.adjust(p, "holm")), "\n")
tell("range.3.20", ptukey(3.5, 3, 20, lower.tail = FALSE))
tell("range.4.12", ptukey(4.2, 4, 12, lower.tail = FALSE))
tell("critical.8.24", qtukey(0.95, 8, 24))
tell("critical.3.12", qtukey(0.95, 3, 12))
for (name in c("PlantGrowth", "sleep", "morley")) {
  values <- switch(name, PlantGrowth = residuals(fit.plants), sleep = sleep$extra, morley = morley$Speed)
  look <- shapiro.test(values)
  tell(paste0("shapiro.", name, ".w"), look$statistic)
  tell(paste0("shapiro.", name, ".p"), look$p.value)
}
tell("shifted.6", pt(1.5, 6, ncp = 2))
tell("shifted.10", pt(-1, 10, ncp = 0.5))
tell("power", power.t.test(n = 4, delta = 1.5, sd = 1, strict = TRUE)$power)
tell("replicates", power.t.test(delta = 1, sd = 1, power = 0.8, strict = TRUE)$n)

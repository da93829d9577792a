//! Gardens in which a rule was broken once, each as small as it goes.

"""One design in many variants: arrays that pass for numbers, blocks of variants that agree, what is asked of them."""

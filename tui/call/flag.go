package call

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"trivet/units"
)

// Flag says what is wrong with a flag of a command, and what would do.
func Flag(cmd *cobra.Command, err error) error {
	var (
		unknown *pflag.NotExistError
		missing *pflag.ValueRequiredError
		wrong   *pflag.InvalidValueError
		syntax  *pflag.InvalidSyntaxError
	)
	help := "try `" + cmd.CommandPath() + " --help`"
	switch {
	case errors.As(err, &unknown):
		name := unknown.GetSpecifiedName()
		if unknown.GetSpecifiedShortnames() != "" {
			return fmt.Errorf("there is no flag -%s: %s", name, help)
		}
		if s := units.Suggest(name, flags(cmd)); s != "" {
			return fmt.Errorf("there is no flag --%s: did you mean --%s", name, s)
		}
		return fmt.Errorf("there is no flag --%s: %s", name, help)
	case errors.As(err, &missing):
		value, _ := pflag.UnquoteUsage(missing.GetFlag())
		name := "--" + missing.GetSpecifiedName()
		if missing.GetSpecifiedShortnames() != "" {
			name = name[1:]
		}
		return fmt.Errorf("%s has no value: write %s %s", name, name, value)
	case errors.As(err, &wrong):
		f := wrong.GetFlag()
		if f.Value.Type() == "bool" {
			return fmt.Errorf("--%s takes no value, and here is %q: write --%s alone", f.Name, wrong.GetValue(), f.Name)
		}
		example := f.DefValue
		if example == "0" { // there is no default
			example = "24"
		}
		return fmt.Errorf("--%s takes a whole number, and here is %q: write for example --%s %s", f.Name, wrong.GetValue(), f.Name, example)
	case errors.As(err, &syntax):
		return fmt.Errorf("%q is no flag: %s", syntax.GetSpecifiedFlag(), help)
	}
	return fmt.Errorf("%w: %s", err, help)
}

// flags are the names that a command's flags go by.
func flags(cmd *cobra.Command) (names []string) {
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	return names
}

package call

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"trivet/mechanics/diag"
	"trivet/units"
)

// Flag says what is wrong with a flag of a command.
func Flag(cmd *cobra.Command, err error) error {
	var (
		unknown *pflag.NotExistError
		missing *pflag.ValueRequiredError
		wrong   *pflag.InvalidValueError
		syntax  *pflag.InvalidSyntaxError
	)
	help := "`" + cmd.CommandPath() + " --help`"
	switch {
	case errors.As(err, &unknown):
		name := unknown.GetSpecifiedName()
		if unknown.GetSpecifiedShortnames() != "" {
			return diag.New("unknown flag -"+name, help)
		}
		if s := units.Suggest(name, flags(cmd)); s != "" {
			return diag.New("unknown flag --"+name, "--"+s)
		}
		return diag.New("unknown flag --"+name, help)
	case errors.As(err, &missing):
		value, _ := pflag.UnquoteUsage(missing.GetFlag())
		name := "--" + missing.GetSpecifiedName()
		if missing.GetSpecifiedShortnames() != "" {
			name = name[1:]
		}
		return diag.New(name+" needs a value", name+" "+value)
	case errors.As(err, &wrong):
		f := wrong.GetFlag()
		if f.Value.Type() == "bool" {
			return diag.New(fmt.Sprintf("--%s takes no value, but %q is given", f.Name, wrong.GetValue()), "--"+f.Name+" alone")
		}
		example := f.DefValue
		if example == "0" { // there is no default
			example = "24"
		}
		return diag.New(fmt.Sprintf("--%s needs a whole number, not %q", f.Name, wrong.GetValue()), "--"+f.Name+" "+example)
	case errors.As(err, &syntax):
		return diag.New(fmt.Sprintf("%q is not a flag", syntax.GetSpecifiedFlag()), help)
	}
	return &diag.Error{Msg: err.Error(), Hint: help, Err: err}
}

// flags are the names that a command's flags go by.
func flags(cmd *cobra.Command) (names []string) {
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	return names
}

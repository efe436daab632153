package call

import (
	"github.com/spf13/cobra"

	"trivet/mechanics/schema"
)

// Schema is "trivet schema". It exits with 0, and with CantDo where it can't be
// written.
func (c *Call) Schema() *cobra.Command {
	return &cobra.Command{Use: "schema", Short: "print the JSON Schema of a sheet",
		Long:        "Prints the JSON Schema of a sheet, by which editors complete and check it.",
		Example:     "trivet schema > sheet.schema.json",
		Annotations: map[string]string{topicNote: "sheet"},
		Args:        Alone, ValidArgsFunction: cobra.NoFileCompletions,
		Run: func(*cobra.Command, []string) { c.print(string(schema.JSON())) }}
}

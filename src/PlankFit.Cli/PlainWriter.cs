using System.Text;
using PlankFit.Planking.Findings;

namespace PlankFit.Cli;

/// <summary>Standard error for a person: what was on the command line or in a file is shown and never obeyed, whatever way a message took.</summary>
internal sealed class PlainWriter(TextWriter to) : TextWriter
{
    public override Encoding Encoding => to.Encoding;

    public override void Write(char value) => to.Write(PlainText.OfLines(value.ToString()));

    public override void Write(char[] buffer, int index, int count) =>
        to.Write(PlainText.OfLines(new string(buffer, index, count)));

    public override void Write(string? value) => to.Write(PlainText.OfLines(value ?? ""));

    public override void WriteLine(string? value) => to.WriteLine(PlainText.OfLines(value ?? ""));

    public override void Flush() => to.Flush();
}

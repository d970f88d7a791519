using PlankFit.Planking.Wood;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Glue;

/// <summary>Temperatures as they are written in a job: with their scale.</summary>
internal static class Temperatures
{
    private static readonly Limits Celsius = Limits.FromTo(-10, 60);

    public static readonly string Accepted = Celsius.Into(
        "accepted: degrees with their scale, \"20 C\" or \"68 F\", from {least} to {most} C",
        Limits.Plain
    );

    /// <summary>Degrees Celsius; null where the text is none or no shop is so cold or warm.</summary>
    public static double? Read(string text) =>
        Quantity.Read(text, [("C", 1), ("°C", 1), ("F", 2), ("°F", 2)]) is { } read
        && (read.Factor == 1 ? read.Number : Moisture.Celsius(read.Number)) is var celsius
        && Celsius.Hold(celsius)
            ? celsius
            : null;

    public static double? Of(TableReader table, TextKey key)
    {
        if (table.Text(key) is not { } text)
        {
            return null;
        }

        double? read = Read(text);
        if (read is null)
        {
            table.Wrong(key, Accepted);
        }

        return read;
    }
}

using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Editing;

/// <summary>A value that stands in a job file, or could: what a person may change without opening the file.</summary>
/// <param name="Address">Where it is: "layer[0].width", tables that are there several times counted from nought.</param>
/// <param name="Table">Of the table that it lies in: "layer[0]".</param>
/// <param name="Key">As it is described.</param>
public sealed record JobField(string Address, string Table, JobKey Key)
{
    /// <summary>As a person writes it, a text without its quotes; null where the key is left out.</summary>
    public string? Written { get; init; }

    /// <summary>The line that it stands on, from 1; that of the table's last line where it is left out.</summary>
    public required int Line { get; init; }

    /// <summary>Where the value stands in the text, in UTF-16 units, the last not included; of one that is left out the place where its line goes.</summary>
    internal (int From, int To) Span { get; init; }
}

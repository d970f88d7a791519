using System.Collections.Immutable;

namespace PlankFit.Reading.Editing;

/// <summary>What a change of one value did, as a builder says it.</summary>
public static class ChangeWords
{
    /// <summary>width of inner to 120; angle drift of outer left out; offsets of hull to table.csv.</summary>
    /// <param name="text">Of the job before the change.</param>
    /// <param name="address">As <see cref="JobField.Address"/> has it; one that is none stands for itself.</param>
    /// <param name="typed">As a person writes it.</param>
    public static string Of(string text, string address, string typed)
    {
        ImmutableArray<JobField> fields = JobFields.Of(text);
        string to = typed.Trim() is { Length: > 0 } value ? $"to {value}" : "left out";
        return fields.FirstOrDefault(f => f.Address == address) is { } field
            ? $"{Plain(field.Key.Name)} of {Named(fields, field.Table)} {to}"
            : $"{address} {to}";
    }

    /// <summary>By the name that the builder gave it; else as its table is called.</summary>
    private static string Named(ImmutableArray<JobField> fields, string table) =>
        fields.FirstOrDefault(f => f.Table == table && f.Key.Name == "name")?.Written
        ?? Plain(table[(table.LastIndexOf('.') + 1)..].Split('[')[0]);

    private static string Plain(string key) => key.Replace('-', ' ');
}

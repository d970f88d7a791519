using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>[[behind]]: what lies behind the planks.</summary>
internal static class BehindBinder
{
    public static ImmutableArray<BehindSpec> Bind(
        ImmutableArray<TableReader> tables,
        LengthUnit units
    )
    {
        foreach (TableReader table in tables)
        {
            table.Close();
        }

        return [];
    }
}

using System.Collections.Immutable;
using PlankFit.Export.Tables;

namespace PlankFit.App.Running;

/// <summary>What a feature leaves in the folder: sheets, tables, and files of its own.</summary>
/// <param name="Tables">Each a CSV and a sheet of the workbook.</param>
internal sealed record FeatureFiles(
    ImmutableArray<BookSection> Sheets,
    ImmutableArray<ListedTable> Tables,
    ImmutableArray<FileWork> Files
)
{
    public static readonly FeatureFiles None = new([], [], []);

    public static FeatureFiles All(params IEnumerable<FeatureFiles> features)
    {
        FeatureFiles[] all = [.. features];
        return new(
            [.. all.SelectMany(f => f.Sheets).OrderBy(s => s.Place)],
            [.. all.SelectMany(f => f.Tables)],
            [.. all.SelectMany(f => f.Files)]
        );
    }
}

/// <summary>A table of the folder, worked out once for both its files.</summary>
/// <param name="File">The name of its CSV, without its ending.</param>
/// <param name="FrozenColumns">So many stay in view in the workbook.</param>
internal sealed record ListedTable(string File, Lazy<Table> Table, int FrozenColumns)
{
    public static ListedTable Of(string file, Func<Table> table, int frozenColumns = 1) =>
        new(file, new(table), frozenColumns);
}

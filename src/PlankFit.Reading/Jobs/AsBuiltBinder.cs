using System.Collections.Immutable;
using PlankFit.Reading.Drafts;

namespace PlankFit.Reading.Jobs;

/// <summary>[standing]: the file of what was measured on the hull as it stands, and the station from which seams are measured, what is fitted and what is sawn.</summary>
internal static class AsBuiltBinder
{
    public static AsBuiltDraft Bind(TableReader? table)
    {
        if (table is null)
        {
            return AsBuiltDraft.None;
        }

        string? measured = table.Text("measured");
        string? from = table.Text("from");
        string? cut = table.Text("cut");
        var draft = new AsBuiltDraft(
            measured,
            table.PlaceOf("measured"),
            from,
            table.PlaceOf("from"),
            cut,
            table.PlaceOf("cut"),
            table.Texts("fitted")
        );
        table.Close();
        return draft;
    }
}

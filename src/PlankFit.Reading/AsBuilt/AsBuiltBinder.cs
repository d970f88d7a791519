using PlankFit.Reading.Drafts;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.AsBuilt;

/// <summary>[as-built]: the file of what was measured on the hull as it stands, and the station from which seams are measured, what is fitted and what is sawn.</summary>
internal static class AsBuiltBinder
{
    public static AsBuiltDraft Bind(TableReader? table)
    {
        if (table is null)
        {
            return AsBuiltDraft.None;
        }

        string? measured = table.Text(AsBuiltKeys.Measured);
        string? from = table.Text(AsBuiltKeys.From);
        string? cut = table.Text(AsBuiltKeys.Sawn);
        var draft = new AsBuiltDraft(
            measured,
            table.PlaceOf(AsBuiltKeys.Measured),
            from,
            table.PlaceOf(AsBuiltKeys.From),
            cut,
            table.PlaceOf(AsBuiltKeys.Sawn),
            table.Texts(AsBuiltKeys.Fitted)
        )
        {
            AsMeasured = table.Texts(AsBuiltKeys.AsMeasured),
        };
        table.Close();
        return draft;
    }
}

using System.Globalization;
using System.Net;
using Microsoft.AspNetCore.Http;

namespace PlankFit.Pages.Guarding;

/// <summary>
/// Who may ask. A page of another site that this browser shows could send requests here too: such a one is known by the names in its head, which no script can set.
/// </summary>
internal static class Guard
{
    /// <summary>A form of another site cannot send it, and a script of another site would have to ask first.</summary>
    public const string OwnHeader = "X-PlankFit";

    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self' data: blob:; "
        + "base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /// <param name="stopping">Set when the server ends: what is still asked of it then finds it half gone, which is no fault.</param>
    public static async Task Run(
        HttpContext context,
        RequestDelegate next,
        CancellationToken stopping
    )
    {
        HttpResponse answer = context.Response;
        IHeaderDictionary head = answer.Headers;
        head.ContentSecurityPolicy = Policy;
        head.XContentTypeOptions = "nosniff";
        head["Referrer-Policy"] = "no-referrer";
        head["Cross-Origin-Opener-Policy"] = "same-origin";
        head["Cross-Origin-Resource-Policy"] = "same-origin";
        head.CacheControl = "no-store";
        (int Code, string Why)? refused = Refusal(context.Request, context.Connection);
        if (refused is { } no)
        {
            answer.StatusCode = no.Code;
            await answer.WriteAsync(no.Why);
            return;
        }

        try
        {
            await next(context);
        }
        catch (Exception e)
            when (e is not (BadHttpRequestException or OperationCanceledException or IOException)
                && !stopping.IsCancellationRequested
            )
        {
            // As the command line has it; whoever asked is told by the number of the answer.
            await Console.Error.WriteLineAsync(
                $"plankfit-page: a fault of the program, not of the job: {(Environment.GetEnvironmentVariable("PLANKFIT_TRACE") is null ? e.Message : e)}"
            );
            throw;
        }
    }

    /// <summary>Why a request is not answered; null where it is.</summary>
    private static (int Code, string Why)? Refusal(HttpRequest request, ConnectionInfo connection)
    {
        // A name that leads here from elsewhere (rebinding) is not ours, whatever address it stands for.
        string port = connection.LocalPort.ToString(CultureInfo.InvariantCulture),
            host = request.Host.Value ?? "";
        bool isLocal = IPAddress.Loopback.Equals(connection.LocalIpAddress);
        if (
            host != $"{connection.LocalIpAddress}:{port}"
            && !(isLocal && host == $"localhost:{port}")
        )
        {
            return (421, "This is not the host that was asked for.");
        }

        string site = request.Headers["Sec-Fetch-Site"].ToString();
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method))
        {
            bool foreign = site is "cross-site" or "same-site";
            // A link from elsewhere may be followed; nothing may be fetched into another page.
            return foreign && request.Headers["Sec-Fetch-Mode"] != "navigate"
                ? (403, "Asked for by another site.")
                : null;
        }

        return
            request.Headers.Origin != $"http://{host}"
            || site is not ("" or "same-origin")
            || request.Headers[OwnHeader] != "1"
            ? (403, "Sent by another site.")
            : null;
    }
}

-- Opens the file named by SPANWISE_FILE in Neovim's own protocol client, waits for the findings, asks for the hover at
-- SPANWISE_LINE (from 0), and writes both as JSON to SPANWISE_OUT. Written for Neovim 0.7.
vim.o.swapfile = false
vim.o.shadafile = 'NONE'

local file = vim.env.SPANWISE_FILE
local out = { findings = {}, hover = vim.NIL, capabilities = vim.NIL, stopped = false }

local function finish()
  local handle = assert(io.open(vim.env.SPANWISE_OUT, 'w'))
  handle:write(vim.json.encode(out))
  handle:close()
  vim.cmd('qall!')
end

vim.api.nvim_create_autocmd('VimEnter', {
  callback = function()
    vim.cmd('edit ' .. vim.fn.fnameescape(file))
    local buffer = vim.api.nvim_get_current_buf()
    local client_id = vim.lsp.start_client({
      name = 'spanwise',
      cmd = { vim.env.SPANWISE_NODE, vim.env.SPANWISE_COMMAND, 'serve', '--stdio' },
      root_dir = vim.fn.fnamemodify(file, ':h'),
      get_language_id = function() return 'span' end,
      on_exit = function() out.stopped = true end,
    })
    vim.bo[buffer].filetype = 'span'
    vim.lsp.buf_attach_client(buffer, client_id)

    vim.wait(20000, function() return #vim.diagnostic.get(buffer) > 0 end, 50)
    for _, d in ipairs(vim.diagnostic.get(buffer)) do
      table.insert(out.findings, { line = d.lnum, message = d.message, severity = d.severity, code = d.user_data.lsp.code })
    end

    local client = vim.lsp.get_client_by_id(client_id)
    if client then
      out.capabilities = vim.tbl_keys(client.server_capabilities)
      local answer = client.request_sync('textDocument/hover', {
        textDocument = vim.lsp.util.make_text_document_params(buffer),
        position = { line = tonumber(vim.env.SPANWISE_LINE), character = tonumber(vim.env.SPANWISE_CHARACTER) },
      }, 10000, buffer)
      if answer and answer.result then out.hover = answer.result.contents end
      client.stop()
      vim.wait(5000, function() return out.stopped end, 50)
    end
    finish()
  end,
})
